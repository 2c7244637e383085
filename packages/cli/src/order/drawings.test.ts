import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';
import { OPEN, RING } from '../ring.test.support.js';
import { altered } from './small-order.test.support.js';

const cwd = temporaryFolder();
mkdirSync(join(cwd, 'jobs', 'drawings'), { recursive: true });
writeFileSync(join(cwd, 'jobs', 'drawings', 'ring.svg'), RING);
writeFileSync(join(cwd, 'jobs', 'drawings', 'open.svg'), OPEN);

async function plan(order: string, ...words: string[]) {
  writeFileSync(join(cwd, 'jobs', 'order.yaml'), order);
  return run(['plan', join('jobs', 'order.yaml'), ...words], { cwd });
}

/** The small order with other lines in place of its heart's outline and size. */
const drawn = (lines: string) => altered('outline: heart\n    across: 4 in', lines);

describe('an item of an order may be a drawing', () => {
  test('from beside the order, with a blank for each of its outlines', async () => {
    const { stdout, stderr, exitCode } = await plan(drawn('svg: drawings/ring.svg'), '--json');
    expect(stderr).toBe('');
    expect(exitCode).toBe(0);
    const { blanks } = JSON.parse(stdout);
    expect(blanks.slice(0, 2).map(({ id }: { readonly id: string }) => id)).toEqual([
      'Heart, outer',
      'Heart, inner',
    ]);
    expect(blanks[0].strip.outline).toBe('drawings/ring.svg');
    expect(blanks[0].strip.developed).toBeCloseTo(80 * Math.PI, 3);
    expect(blanks[1].strip.developed).toBeCloseTo(40 * Math.PI, 3);
    expect(blanks[1].quantity).toBe(3);
  });

  test('made larger or smaller', async () => {
    const order = drawn('svg: drawings/ring.svg\n    across: 4 in\n    tolerance: 0.1 mm');
    const { stdout } = await plan(order, '--json');
    expect(JSON.parse(stdout).blanks[0].strip.developed).toBeCloseTo(4 * 25.4 * Math.PI, 3);
  });

  test('and its plan passes the check', async () => {
    const folder = join('jobs', 'packet');
    expect((await plan(drawn('svg: drawings/ring.svg'), '--out', folder)).exitCode).toBe(0);
    const { stdout } = await run(['check', join(folder, 'plan.json')], { cwd });
    expect(stdout).toContain('good: ');
  });

  test.each<[lines: string, fault: string]>([
    [
      'svg: drawings/open.svg',
      '24: items[0].svg gives no outline: drawings/open.svg:2:3: path "hook": The path is open',
    ],
    [
      'svg: drawings/gone.svg',
      '24: items[0].svg cannot be read: there is no such file or folder; check the spelling',
    ],
    ['svg: drawings', '24: items[0].svg cannot be read: it is a folder; name a file in it'],
    [
      'svg: [a, b]',
      '24: items[0].svg must be the file of a drawing in SVG, such as duck.svg; found',
    ],
    ['svg:', '24: items[0].svg must be the file of a drawing in SVG, such as duck.svg; found'],
    [
      'svg: drawings/ring.svg\n    outline: heart',
      '25: items[0].outline is not a known field; known here: name, quantity, turn, rolled, spares, svg, depth,',
    ],
    ['svg: drawings/ring.svg\n    across: 0', '25: items[0].across must be above 0; found 0'],
    [
      'svg: drawings/ring.svg\n    across: 3\n    high: 5',
      '24: items[0].svg gives no outline: drawings/ring.svg: ',
    ],
  ])('%j is told with its line', async (lines, fault) => {
    const { exitCode, stderr } = await plan(drawn(lines));
    expect(stderr).toContain(`order.yaml:${fault}`);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(exitCode).toBe(2);
  });
});
