import { families } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';

const cwd = temporaryFolder();
const blank = (words: string) => run(['blank', ...words.split(' ')], { cwd });
const json = async (words: string) => JSON.parse((await blank(`${words} --json`)).stdout);

describe('the largest size that a length gives', () => {
  // Common practice: ten sides of 1 5/8 in and a tab of 3/4 in take 17 in.
  test('is found by hand for ten sides', async () => {
    const { stdout, stderr } = await blank(
      'regular-polygon --sides 10 --side 1 --fits-length 17 --tab 3/4 --hem 0 --depth 1',
    );
    expect(stderr).toBe('');
    expect(stdout).toContain('Regular polygon: sides 10, side 1 5/8 in\n');
    expect(stdout).toContain('Strip      17 x 1 in\n');
  });

  test('uses up the length, of every family', async () => {
    for (const { name, sizes, example } of families) {
      const counts = sizes.flatMap(({ name: size, kind }) => {
        const value = example[size];
        const isLong = kind === 'length' || kind === 'corners';
        return isLong || value === undefined ? [] : [`--${size.replaceAll(' ', '-')} ${value}`];
      });
      const words = [name.replaceAll(' ', '-'), ...counts, '--depth 1 --fits-length 36'].join(' ');
      const { length } = await json(words);
      expect(length, name).toBe(36 * 25.4);
    }
  });

  test('is that of all outlines of a drawing together', async () => {
    const { writeFileSync } = await import('node:fs');
    const { RING } = await import('../ring.test.support.js');
    writeFileSync(`${cwd}/ring.svg`, RING);
    const [outer, inner] = await json('--svg ring.svg --fits-length 400mm --units mm --depth 25');
    expect(outer.length).toBe(400);
    // The hole is half as large.
    expect(inner.strip.developed).toBeCloseTo(outer.strip.developed / 2, 3);
  });

  test.each<[words: string, message: string]>([
    ['heart --depth 1 --fits-length 0', '--fits-length must be above 0; found 0'],
    ['heart --depth 1 --fits-length 1', '--fits-length: No size of this outline'],
    ['heart --depth 1 --longest none', '--longest must be a length'],
  ])('%s', async (words, message) => {
    const { exitCode, stderr } = await blank(words);
    expect(stderr).toContain(message);
    expect(exitCode).toBe(2);
  });
});

describe('a strip that is too long', () => {
  test('is divided into even parts, each with its own tab and marks', async () => {
    const words = 'rectangle --long 20 --wide 10 --depth 1 --longest 36';
    const { stdout } = await blank(words);
    expect(stdout).toContain('part 1 of 2\n');
    expect(stdout).toMatch(/the far end is joined to the\s+square end of part 2/);
    const parts = await json(words);
    expect(parts).toHaveLength(2);
    const developed = parts.map(
      ({ strip }: { readonly strip: { readonly developed: number } }) => strip.developed / 25.4,
    );
    expect(developed[0] + developed[1]).toBeCloseTo(60, 9);
    for (const part of parts) {
      expect(part.length).toBeLessThanOrEqual(36 * 25.4);
      expect(part.strip.tab).toBe(12.7);
    }
    const bends = parts.flatMap(
      ({ strip }: { readonly strip: { bends: unknown[] } }) => strip.bends,
    );
    expect(bends).toHaveLength(4);
    expect(parts[1].id).toBe('rectangle, part 2 of 2');
  });

  test('is whole where it is not too long, and JSON is a list all the same', async () => {
    const parts = await json('rectangle --long 3 --wide 2 --depth 1 --longest 36');
    expect(parts).toHaveLength(1);
    expect(parts[0].id).toBe('rectangle');
  });

  test('cannot be divided on a tight curve', async () => {
    const { stderr } = await blank('circle --across 1 --tab 1/4 --depth 1 --longest 2');
    expect(stderr).toMatch(/^stripwright: --longest: The strip cannot be divided into parts/);
  });
});

describe('bend rules compared', () => {
  const HOUSE = 'rectangle --long 3 --wide 1 --depth 1 --compare-rules';

  test('by all rules that the sizes allow, with what the others lack', async () => {
    const { stdout } = await blank(`${HOUSE} --thickness 100lb --inside-radius 1/64`);
    // 2 (3 + 1) in and a tab of 1/2 in.
    expect(stdout).toMatch(/^ +zero thickness +8\.5000 +in use$/m);
    expect(stdout).toMatch(/^ +airframe +8\.\d{4} +[+-]0\.0\d{3}$/m);
    expect(stdout).toContain('Not compared: neutral axis, which needs --neutral-axis-factor\n');
    expect(stdout).toContain('Not compared: handbook, which needs --handbook-metal\n');
  });

  test('with the rule in use first', async () => {
    const { stdout } = await blank(
      `${HOUSE} --thickness 100lb --inside-radius 1/64 --bend-rule steel-standard`,
    );
    expect(stdout).toMatch(/Difference\n +steel standard +8\.\d{4} +in use\n +zero thickness/);
  });

  test('as JSON', async () => {
    const { comparison } = await json(`${HOUSE} --thickness 0.3mm`);
    expect(comparison.rules).toEqual([{ rule: 'zero thickness', length: 215.9, difference: 0 }]);
    expect(comparison.lacking).toHaveLength(4);
  });
});
