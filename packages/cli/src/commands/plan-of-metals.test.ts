import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';
import { onePieceASheet } from '../one-piece-a-sheet.test.support.js';
import { altered } from '../order/small-order.test.support.js';

const cwd = temporaryFolder();

async function plan(order: string, ...words: string[]) {
  writeFileSync(join(cwd, 'order.yaml'), order);
  const { exitCode, stdout, stderr } = await run(['plan', 'order.yaml', ...words], {
    cwd,
    planner: onePieceASheet,
  });
  expect(stderr).toBe('');
  expect(exitCode).toBe(0);
  return stdout;
}

const COPPER = altered(
  '  hem: 1/4',
  [
    '  metal: copper',
    '  thickness: 16 oz',
    '  bend rule: steel standard',
    '  inside radius: 1/32',
    '  edge: double hem',
    '  seam: grooved seam',
    '  seam width: 1/8',
    '  hem: 1/4',
  ].join('\n'),
);

describe('a plan', () => {
  // US FDA Food Code 4-101.14(A): copper may not touch food of a pH below 6.
  test('warns of a metal that may not touch every food', async () => {
    expect(await plan(COPPER)).toContain('A cutter of copper should not touch acidic food.');
    expect(await plan(altered('depth: 1', 'depth: 1'))).not.toContain('should not touch');
  });

  test('says what is hard to make, with the name of each blank', async () => {
    const star = 'outline: star\n    points: 5\n    hem face: inside';
    const stdout = await plan(COPPER.replace('outline: heart', star));
    const [, after = ''] = stdout.split('Before cutting, think of this:\n');
    expect(after).toMatch(/^ {2}Heart: Bend 2 closes the hem through 1\d\d[.\d]* degrees;/m);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('keeps metal, edges and seams in its file, which passes the check', async () => {
    await plan(COPPER, '--out', 'packet');
    const file = JSON.parse(await plan(COPPER, '--json'));
    expect(file.schemaVersion).toBe(1);
    expect(file.order.metal).toMatchObject({ name: 'copper', bendRule: 'steel standard' });
    const [heart, hexagon] = file.blanks;
    expect(heart.strip.edge).toEqual({
      kind: 'double hem',
      face: 'outside',
      stage: 'closed',
      foldLines: [6.35, 12.7],
    });
    // A grooved seam takes a third of its allowance before the outline (from memory).
    expect(heart.strip.seam).toMatchObject({ kind: 'grooved seam', atStart: 3.175, atEnd: 6.35 });
    expect(hexagon.strip.edge.kind).toBe('raw edge');
    expect(hexagon.strip.refold.closureGap).toBeLessThan(25.4 / 32);
    const { stdout } = await run(['check', join('packet', 'plan.json')], { cwd });
    expect(stdout).toContain('good: ');
  });
});
