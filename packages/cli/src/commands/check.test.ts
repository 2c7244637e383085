import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { at, copyOf, smallPlan } from '../plan-file/small-plan.test.support.js';

async function checkSpoilt(spoil: (file: PlanFile) => void, ...words: string[]) {
  const cwd = temporaryFolder();
  const file = copyOf((await smallPlan()).file);
  spoil(file);
  writeFileSync(join(cwd, 'plan.json'), JSON.stringify(file));
  return run(['check', 'plan.json', ...words], { cwd });
}

describe('a plan file', () => {
  test('as written is good, and the check says what it looked at', async () => {
    const { exitCode, stdout, stderr } = await checkSpoilt(() => {});
    expect(stderr).toBe('');
    expect(stdout).toMatch(/^plan\.json: good: \d+ layouts? and 8 pieces checked; /);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(exitCode).toBe(0);
  });

  test('is told of as data with --json, good or not, and with --quiet only where it is not', async () => {
    const good = await checkSpoilt(() => {}, '--json');
    expect(good).toMatchObject({ exitCode: 0, stderr: '' });
    expect(JSON.parse(good.stdout)).toEqual({ good: true, faults: [] });
    const spoil = (file: PlanFile) => {
      at(file.layouts, 0).pieces.pop();
    };
    const bad = await checkSpoilt(spoil, '--json');
    expect(bad).toMatchObject({ exitCode: 2, stderr: '' });
    const told = await checkSpoilt(spoil);
    expect(JSON.parse(bad.stdout)).toEqual({
      good: false,
      faults: told.stderr.trimEnd().split('\n'),
    });
    expect(await checkSpoilt(() => {}, '--quiet')).toEqual({ exitCode: 0, stdout: '', stderr: '' });
    expect(await checkSpoilt(spoil, '--quiet')).toEqual(told);
  });

  const piece = (file: PlanFile, index: number) => at(at(file.layouts, 0).pieces, index);

  test.each<[name: string, spoil: (file: PlanFile) => void]>([
    [
      'a piece moved by a mark',
      (file) => {
        piece(file, 0).x += file.order.smallestMark;
      },
    ],
    [
      'a piece on top of another',
      (file) => {
        Object.assign(piece(file, 1), { x: piece(file, 0).x, y: piece(file, 0).y });
      },
    ],
    [
      'a piece gone',
      (file) => {
        at(file.layouts, 0).pieces.pop();
      },
    ],
    [
      'a cut gone',
      (file) => {
        at(file.layouts, 0).cuts.shift();
      },
    ],
    [
      'a layout gone',
      (file) => {
        file.layouts.pop();
      },
    ],
    [
      'one more wanted',
      (file) => {
        at(file.blanks, 0).quantity += 1;
      },
    ],
    [
      'a layout cut twice',
      (file) => {
        at(file.layouts, 0).count += 1;
      },
    ],
    [
      'a price raised',
      (file) => {
        file.cost += 1;
      },
    ],
    [
      'a bound above the cost',
      (file) => {
        file.bound.cost = file.cost + 1;
      },
    ],
    [
      'a longest cut that the cuts exceed',
      (file) => {
        file.shear.longestCut = 25.4;
      },
    ],
    [
      'two blanks of one id',
      (file) => {
        at(file.blanks, 1).id = at(file.blanks, 0).id;
      },
    ],
    [
      'a length off the marks',
      (file) => {
        piece(file, 0).x += 0.01;
      },
    ],
    [
      'a strip wider than its blank',
      (file) => {
        const { strip } = at(file.blanks, 0);
        if (strip !== undefined) strip.depth += 25.4;
      },
    ],
  ])('is faulty with %s', async (_name, spoil) => {
    const { exitCode, stdout, stderr } = await checkSpoilt(spoil);
    expect(exitCode).toBe(2);
    expect(stdout).toBe('');
    for (const line of stderr.trimEnd().split('\n')) expect(line).toMatch(/^plan\.json: \S/);
    expect(stderr).not.toMatch(/undefined|NaN|\[object|^ +at /m);
  });

  test('that is not there', async () => {
    const { exitCode, stderr } = await run(['check', 'plan.json'], { cwd: temporaryFolder() });
    expect(stderr).toMatch(/^plan\.json: cannot be read: there is no such file/);
    expect(exitCode).toBe(2);
  });

  test('that is an order', async () => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, 'order.yaml'), 'name: x\n');
    const { exitCode, stderr } = await run(['check', 'order.yaml'], { cwd });
    expect(stderr).toMatch(/^order\.yaml: not readable as JSON: /);
    expect(exitCode).toBe(2);
  });
});
