import { describe, expect, test } from 'vitest';
import { altered, faultsOf, read } from './small-order.test.support.js';

/** The small order with its heart made a rectangle of other sizes. */
const rectangle = (long: string, more = '') =>
  altered(
    'outline: heart\n    across: 4 in',
    `outline: rectangle\n    long: ${long}\n    wide: 4 in${more}`,
  );

const MARK = 25.4 / 32;

describe('a strip longer than every sheet and offcut', () => {
  const { blanks } = read(rectangle('12 in'));
  const parts = blanks.filter(({ name }) => name.startsWith('Heart'));

  test('is cut in parts that fit, each a blank of its own', () => {
    expect(parts.map(({ name }) => name)).toEqual(['Heart, part 1 of 2', 'Heart, part 2 of 2']);
    expect(parts.map(({ quantity }) => quantity)).toEqual([3, 3]);
    // The longest sheet is 28 in long.
    for (const { length } of parts) expect(length).toBeLessThanOrEqual(28 * 32);
    const developed = parts.reduce((sum, { cutter }) => sum + (cutter?.strip.developed ?? 0), 0);
    expect(developed / 25.4).toBeCloseTo(32, 9);
  });

  test('has bends numbered and measured in each part by itself', () => {
    for (const { cutter, length } of parts) {
      const bends = cutter?.strip.bends ?? [];
      expect(bends.map(({ number }) => number)).toEqual(bends.map((_, index) => index + 1));
      for (const { at } of bends) expect(at).toBeLessThanOrEqual(length * MARK);
    }
    expect(parts.flatMap(({ cutter }) => cutter?.strip.bends ?? [])).toHaveLength(4);
  });
});

test('a strip that some sheet holds is whole', () => {
  const { blanks } = read(rectangle('5 in'));
  expect(blanks[0]?.name).toBe('Heart');
  expect(blanks[0]?.cutter?.part).toBeUndefined();
});

test('a strip that is wider than the stock, or that no parts make, is left to the planner', () => {
  const wide = rectangle('12 in').replace('depth: 1 in', 'depth: 29 in');
  expect(read(wide).blanks[0]?.name).toBe('Heart');
  // A tab as long as a sheet leaves no room for metal.
  expect(read(rectangle('120 in', '\n    tab: 29 in')).blanks[0]?.name).toBe('Heart');
});

test('a part may not have the name of another item', () => {
  const order = rectangle('12 in').replace('name: Lid', 'name: Heart, part 2 of 2');
  expect(faultsOf(order)).toEqual([
    'order.yaml:41: items[3].name must be a name of its own; found Heart, part 2 of 2, as in items[0]',
  ]);
});
