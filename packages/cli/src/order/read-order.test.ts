import { readFileSync } from 'node:fs';
import { families } from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { printSize } from '../length/print-length.js';
import { orderToProblem } from './order-to-problem.js';
import { altered, faultsOf, read, SMALL_ORDER } from './small-order.test.support.js';

const MARK = 25.4 / 32;

function sizeOf(text: string, index: number): string {
  const { blanks } = read(text);
  const { length, width } = blanks[index] ?? { length: 0, width: 0 };
  return printSize(length * MARK, width * MARK, { units: 'in', mark: MARK });
}

describe('blanks', () => {
  test('the bench rule: as many sides as there are, and the tab', () => {
    // Common practice: ten sides of 1 5/8 in and a 3/4 in tab take 17 in.
    const coin = altered(
      'sides: 6\n    across flats: 3',
      'sides: 10\n    side: 1 5/8\n    tab: 3/4',
    );
    expect(sizeOf(coin, 1)).toBe('17 x 1 in');
  });

  test("take the shop's hem and tab, or their own", () => {
    // Regular hexagon: a side is the width across flats divided by the square root of 3.
    const side = 3 / Math.sqrt(3);
    const marks = Math.ceil((6 * side + 0.5) * 32);
    const { blanks } = read(SMALL_ORDER);
    expect(blanks[1]).toMatchObject({ length: marks, width: 32 });
    expect(blanks[0]).toMatchObject({ width: 40 });
    expect(read(altered('hem: 0', 'hem: 3/8')).blanks[1]).toMatchObject({ width: 44 });
  });

  // NAVEDTRA 14251, Steelworker vol. 2: a double hem takes twice its width, a wired edge two and a
  // half times its wire. A grooved seam takes three times its width (texts on tinsmithing).
  test("take the shop's edge and seam, or their own", () => {
    const shop = altered(
      '  hem: 1/4',
      '  edge: double hem\n  seam: grooved seam\n  seam width: 1/8\n  hem: 1/4',
    );
    const side = 3 / Math.sqrt(3);
    const length = Math.ceil((6 * side + 3 / 8) * 32);
    const { blanks } = read(shop);
    expect(blanks[0]).toMatchObject({ width: 48 });
    // Its own hem is 0, which is a raw edge whatever the shop does.
    expect(blanks[1]).toMatchObject({ length, width: 32 });
    const own = read(
      shop.replace('depth: 3/4', 'depth: 3/4\n    edge: wired edge\n    wire: 1/16'),
    );
    expect(own.blanks[2]).toMatchObject({ width: 24 + 5 });
  });

  // Theorem of parallel curves: a smooth closed strip whose metal lies T / 2 further out is pi T longer.
  test('are sized inside, outside, or in the middle of the metal', () => {
    const thickness = 0.04;
    const metal = altered(
      '  hem: 1/4',
      `  bend rule: neutral axis\n  thickness: ${thickness}\n  inside radius: 0\n  neutral axis factor: 1/2\n  hem: 1/4`,
    ).replace('outline: heart', 'outline: circle');
    const lengthOf = (order: string) =>
      read(order).blanks[0]?.cutter?.strip.length ?? expect.fail();
    const sized = (face: string) =>
      lengthOf(metal.replace('outline: circle', `outline: circle\n    size is: ${face}`));
    const step = Math.PI * thickness * 25.4;
    expect(sized('inside') - sized('middle')).toBeCloseTo(step, 6);
    expect(sized('middle') - sized('outside')).toBeCloseTo(step, 6);
    expect(lengthOf(metal)).toBe(sized('inside'));
    expect(lengthOf(metal.replace('  hem: 1/4', '  size is: outside\n  hem: 1/4'))).toBe(
      sized('outside'),
    );
  });

  test('round up to the mark', () => {
    expect(sizeOf(altered('blank: 6 x 4 in', 'blank: 6.001 x 152.4 mm'), 3)).toBe('1/4 x 6 in');
  });

  test('may turn unless the item says no', () => {
    expect(read(SMALL_ORDER).blanks.map(({ mayTurn }) => mayTurn)).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });
});

describe('the problem', () => {
  test('is in marks and coins, stock rounded down', () => {
    const problem = orderToProblem(read(altered('size: 28 x 20 in', 'size: 28.03 x 508 mm')));
    expect(problem.stock).toEqual([
      { kind: 'sheet', id: 'Large', length: 35, width: 640, price: 740, onHand: 1, canBuy: 'any' },
      { kind: 'sheet', id: 'Small', length: 640, width: 448, price: 390, onHand: 0, canBuy: 'any' },
      { kind: 'offcut', id: 'A', length: 560, width: 192 },
    ]);
    expect(problem.shear).toEqual({ firstCut: 'either', longestCut: 36 * 32 });
    expect(problem.pieces.map(({ id, quantity }) => [id, quantity])).toEqual([
      ['Heart', 3],
      ['Hexagon', 2],
      ['House', 1],
      ['Lid', 2],
    ]);
  });

  test.each([
    ['yes', 'any'],
    ['true', 'any'],
    ['Yes', 'any'],
    ['"yes"', 'any'],
    ['no', 0],
    ['false', 0],
    ['12', 12],
    ['0', 0],
  ])('can buy: %s', (written, canBuy) => {
    const problem = orderToProblem(read(altered('can buy: yes', `can buy: ${written}`)));
    expect(problem.stock[0]).toMatchObject({ canBuy });
  });
});

test('outlines are found however they are spelt', () => {
  for (const spelling of ['regular-polygon', 'Regular Polygon', 'regular_polygon']) {
    expect(faultsOf(altered('outline: regular polygon', `outline: ${spelling}`))).toEqual([]);
  }
});

test('every family can be ordered by the sizes of its own example', () => {
  for (const { name, sizes, example } of families) {
    const lines = sizes.flatMap(({ name: size, kind }) => {
      const value = example[size];
      if (value === undefined) return [];
      if (typeof value !== 'object')
        return [`    ${size}: ${value}${kind === 'length' ? ' mm' : ''}`];
      return [`    ${size}: [${value.map(({ x, y }) => `[${x} mm, ${y} mm]`).join(', ')}]`];
    });
    const item = [
      '  - name: One',
      `    outline: ${name}`,
      ...lines,
      '    depth: 1',
      '    quantity: 1',
    ];
    const order = SMALL_ORDER.replace(/items:[\s\S]*/, `items:\n${item.join('\n')}\n`);
    expect(faultsOf(order), name).toEqual([]);
  }
});

test.each(['Y', 'n', 'O'])('the letter %s is a letter, not a yes or no or a number', (letter) => {
  const order = altered('outline: heart', `outline: letter\n    letter: ${letter}`);
  const heights = order.replace('across: 4 in', 'high: 4 in');
  expect(faultsOf(heights)).toEqual([]);
  const [first] = read(heights).blanks;
  expect(first?.cutter).toMatchObject({ family: 'letter' });
});

test('no size of a family hides a field that every item has', () => {
  const taken = ['name', 'outline', 'depth', 'hem', 'tab', 'quantity', 'turn', 'blank'];
  for (const { sizes } of families) {
    expect(sizes.filter(({ name }) => taken.includes(name))).toEqual([]);
  }
});

test.each(['inch', 'metric'])('the %s order of the bakery is in order', (units) => {
  const path = `../../../../test-data/orders/bakery-co-op-${units}.yaml`;
  const text = readFileSync(new URL(path, import.meta.url), 'utf8');
  expect(faultsOf(text)).toEqual([]);
  const { blanks } = read(text);
  const cutters = blanks.filter(({ cutter }) => cutter !== undefined);
  expect(cutters.reduce((sum, { quantity }) => sum + quantity, 0)).toBeGreaterThanOrEqual(250);
  expect(new Set(cutters.map(({ cutter }) => cutter?.strip.depth)).size).toBe(3);
});
