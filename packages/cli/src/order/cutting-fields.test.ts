import { describe, expect, test } from 'vitest';
import { orderToProblem } from './order-to-problem.js';
import { altered, faultsOf, read, SMALL_ORDER } from './small-order.test.support.js';

const SHEAR = 'longest cut: 36 in';
const withShear = (lines: string) => altered(SHEAR, `${SHEAR}\n    ${lines}`);
const withSheet = (lines: string) => altered('can buy: yes', `can buy: yes\n    ${lines}`);
const withKeep = (lines: string) =>
  altered('keep offcuts from: 6 x 1 in', `keep offcuts from: 6 x 1 in\n  ${lines}`);
const problemOf = (order: string) => orderToProblem(read(order));

describe('the shear of an order', () => {
  test('may have a kerf, a trim of the edges, a narrowest strip and more stages', () => {
    const order = withShear(
      'kerf: 1 mm\n    edge trim: 1/4\n    narrowest strip: 3/8 in\n    stages: three',
    );
    // In marks of 1/32 in: 1 mm is 1.26 marks, which rounds up.
    expect(problemOf(order).shear).toEqual({
      firstCut: 'either',
      longestCut: 1152,
      kerf: 2,
      trim: 8,
      narrowestStrip: 12,
      stages: 3,
    });
  });

  test.each([
    ['two', 2],
    ['three', 3],
    ['free', 'free'],
    ['Free', 'free'],
  ])('stages: %s', (written, stages) => {
    expect(problemOf(withShear(`stages: ${written}`)).shear.stages).toBe(stages);
  });

  test('says nothing to the planner of what it does not say', () => {
    expect(problemOf(SMALL_ORDER).shear).toStrictEqual({ firstCut: 'either', longestCut: 1152 });
  });

  test('shortens what a strip is divided to fit', () => {
    const long = altered('across: 4 in', 'across: 10 in');
    const parts = (order: string) =>
      read(order).blanks.filter(({ name }) => name.startsWith('Heart'));
    const trimmed = parts(long.replace(SHEAR, `${SHEAR}\n    edge trim: 6 in`));
    const longest = (blanks: typeof trimmed) => Math.max(...blanks.map(({ length }) => length));
    // The sheet is 28 in long. With 6 in off each edge 16 are left; the offcut of 17 1/2 is not trimmed.
    expect(longest(parts(long))).toBeGreaterThan(17.5 * 32);
    expect(longest(parts(long))).toBeLessThanOrEqual(28 * 32);
    expect(longest(trimmed)).toBeLessThanOrEqual(17.5 * 32);
  });
});

describe('stock of an order', () => {
  test('may come in packs, stand in the books, and be rolled one way', () => {
    const order = withSheet(
      'sold in packs of: 10\n    book value: 6.80\n    rolled: along',
    ).replace('size: 17 1/2 x 6 in', 'size: 17 1/2 x 6 in, book value: 0.5, rolled: across');
    const { stock } = problemOf(order);
    expect(stock[0]).toMatchObject({ packSize: 10, bookValue: 680, rolling: 'along' });
    expect(stock[2]).toMatchObject({ bookValue: 50, rolling: 'across' });
    expect(stock[1]).not.toHaveProperty('packSize');
    expect(stock[1]).not.toHaveProperty('rolling');
  });

  test('is kept by size, worth nothing unless the shop says what', () => {
    expect(problemOf(SMALL_ORDER).keep).toEqual([
      { leastLength: 192, leastWidth: 32, coinsPerMillion: 0 },
    ]);
    expect(problemOf(altered('6 x 1 in\n', '1 x 6.01 in\n')).keep).toEqual([
      { leastLength: 193, leastWidth: 32, coinsPerMillion: 0 },
    ]);
    const none = problemOf(SMALL_ORDER.replace(/ {2}keep offcuts from:.*\n/, ''));
    expect(none).not.toHaveProperty('keep');
  });

  test('is kept at so much a square foot, or a square metre', () => {
    // A square foot is 144 x 1024 = 147456 squares of 1/32 in: a million are 6.7817 square feet.
    expect(problemOf(withKeep('offcuts worth: 1.10\n  offcut trouble: 0.25')).keep).toEqual([
      { leastLength: 192, leastWidth: 32, coinsPerMillion: Math.floor(6.7817 * 110), trouble: 25 },
    ]);
    const metric = SMALL_ORDER.replace('units: in', 'units: mm')
      .replace('smallest mark: 1/32 in', 'smallest mark: 0.5 mm')
      .replaceAll(/(hem|tab|across flats|depth): ([\d/]+)$/gm, '$1: $2 in')
      .replace(/corners: .*/, 'corners: [[0, 0], [76, 0], [76, 50], [38, 80], [0, 50]]')
      .replace('from: 6 x 1 in', 'from: 150 x 25\n  offcuts worth: 11.90');
    // A million squares of half a millimetre are a quarter of a square metre: 297.5 coins.
    expect(problemOf(metric).keep).toEqual([
      { leastLength: 300, leastWidth: 50, coinsPerMillion: 297 },
    ]);
    // A million squares of a twentieth are 0.0025 of one: 2.975 coins, or 297.5 for a hundred millions.
    expect(problemOf(metric.replace('mark: 0.5 mm', 'mark: 0.05 mm')).keep).toEqual([
      { leastLength: 3000, leastWidth: 500, coinsPerMillion: 297, millions: 100 },
    ]);
  });
});

describe('stock of several metals', () => {
  const copper = SMALL_ORDER.replace('hem: 1/4\n', 'hem: 1/4\n  thickness: 100 lb\n')
    .replace('can buy: yes', 'can buy: yes\n    metal: copper\n    thickness: 16 oz')
    .replace('x 6 in }', 'x 6 in, thickness: 0.011 in }');

  test('names its own, and the cutters that of the shop', () => {
    const { pieces, stock, keep } = problemOf(copper);
    // Tinplate of 100 lb a base box is 0.0110 in thick, copper of 16 oz a square foot 0.0216 in
    // (tables of sheet metal).
    const tin = { metal: 'tinplate', thickness: 0.2794 };
    for (const piece of pieces) expect(piece).toMatchObject(tin);
    expect(stock[0]).toMatchObject({ metal: 'copper' });
    expect(stock[0]?.thickness).toBeCloseTo(0.0216 * 25.4, 2);
    expect(stock[1]).toMatchObject(tin);
    expect(stock[2]).toMatchObject(tin);
    expect(keep).toMatchObject([tin]);
  });

  test('divides no strip to fit metal that it is not cut from', () => {
    const long = (order: string) =>
      Math.max(...read(order.replace('across: 4 in', 'across: 10 in')).blanks.map((b) => b.length));
    // The sheet of 28 in is copper; of tinplate there are 20 in at most.
    expect(long(SMALL_ORDER)).toBeGreaterThan(20 * 32);
    expect(long(copper)).toBeLessThanOrEqual(20 * 32);
  });

  test('says nothing of metal where all is of one', () => {
    const { pieces, stock } = problemOf(SMALL_ORDER);
    for (const entry of [...pieces, ...stock]) expect(entry).not.toHaveProperty('metal');
  });

  test.each([
    [
      altered('can buy: yes', 'can buy: yes\n    metal: gold'),
      'order.yaml:17: sheets[0].metal must be tinplate, uncoated steel, galvanized steel, copper, stainless steel, aluminium or brass; found gold',
    ],
    [
      altered('can buy: yes', 'can buy: yes\n    metal: brass\n    thickness: 16 oz'),
      'order.yaml:18: sheets[0].thickness is ounces a square foot, the measure of copper and not of brass; found 16 oz; give a length, or name the metal',
    ],
    [
      altered('x 6 in }', 'x 6 in, thickness: 0.3 mm }'),
      'order.yaml:2: shop.thickness is missing; give the thickness that cutters are made of, since stock tells its own',
    ],
  ])('is told what is wrong: %#', (order, fault) => {
    expect(faultsOf(order)).toEqual([fault]);
  });
});

describe('items of an order', () => {
  test('may want their metal rolled one way, and spares', () => {
    const order = altered('quantity: 3', 'quantity: 3\n    rolled: along\n    spares: 4').replace(
      'turn: no',
      'turn: no\n    rolled: across\n    spares: 0',
    );
    const { pieces } = problemOf(order);
    expect(pieces[0]).toMatchObject({ rolling: 'along', spares: 4, quantity: 3 });
    expect(pieces[3]).toMatchObject({ rolling: 'across', spares: 0 });
    expect(pieces[1]).not.toHaveProperty('rolling');
    expect(pieces[1]).not.toHaveProperty('spares');
  });
});

describe('a bad field is told with its line', () => {
  test.each<[name: string, order: string, fault: string]>([
    [
      'a kerf below 0',
      withShear('kerf: -1/32'),
      'order.yaml:10: shop.shear.kerf must be 0 or more; found -1/32',
    ],
    [
      'a narrowest strip in words',
      withShear('narrowest strip: a finger'),
      'order.yaml:10: shop.shear.narrowest strip must be a length such as 1 5/8, 1.625 in or 41.3 mm; found a finger',
    ],
    [
      'four stages',
      withShear('stages: four'),
      'order.yaml:10: shop.shear.stages must be two, three or free; found four',
    ],
    [
      'a kerf that leaves the trim',
      withShear('kerf: 1/8\n    edge trim: 1/16'),
      'order.yaml:10: shop.shear.kerf must be at most the edge trim of 1/16 in, in which it runs; found 1/8',
    ],
    [
      'a trim that eats a sheet',
      withShear('edge trim: 7'),
      'order.yaml:10: shop.shear.edge trim must be less than half of 14 in, the width of "Small"; found 7',
    ],
    [
      'a pack of none',
      withSheet('sold in packs of: 0'),
      'order.yaml:17: sheets[0].sold in packs of must be a whole number of at least 1; found 0',
    ],
    [
      'a pack of too many',
      withSheet('sold in packs of: 1001'),
      'order.yaml:17: sheets[0].sold in packs of must be at most 1000; found 1001',
    ],
    [
      'packs that cannot be bought whole',
      altered('can buy: yes', 'can buy: 12\n    sold in packs of: 10'),
      'order.yaml:16: sheets[0].can buy must be a multiple of 10, the sheets in a pack; found 12',
    ],
    [
      'a slanted rolling',
      withSheet('rolled: slanted'),
      'order.yaml:17: sheets[0].rolled must be along or across; found slanted',
    ],
    [
      'a book value below 0',
      withSheet('book value: -1'),
      'order.yaml:17: sheets[0].book value must be 0 or more; found -1',
    ],
    [
      'spares in parts',
      altered('quantity: 3', 'quantity: 3\n    spares: 1.5'),
      'order.yaml:28: items[0].spares must be a whole number of at least 0; found 1.5',
    ],
    [
      'offcuts worth something, of no size',
      altered('keep offcuts from: 6 x 1 in', 'offcuts worth: 1.00'),
      'order.yaml:2: shop.keep offcuts from is missing; give the least offcut that is worth anything, such as 6 x 1 in',
    ],
    // 28 x 20 in is 3.889 square feet: at 2.00 worth 7.77, and it costs 7.40.
    [
      'offcuts worth more than sheets',
      withKeep('offcuts worth: 2.00'),
      'order.yaml:11: shop.offcuts worth must be so little that a whole "Large" is worth its price of $7.40 at most, not $7.77; found 2.00',
    ],
    // At 1.00 it is worth 3.88, the rate being rounded down.
    [
      'a sheet in the books for less than as an offcut',
      withKeep('offcuts worth: 1.00').replace('can buy: yes', 'can buy: yes\n    book value: 3.80'),
      'order.yaml:18: sheets[0].book value must be at least $3.88, what a whole one is worth as an offcut; found 3.80',
    ],
    // 17 1/2 x 6 in is 0.729 square feet.
    [
      'an offcut in the books for less than as an offcut',
      withKeep('offcuts worth: 1.00').replace('x 6 in }', 'x 6 in, book value: 0.60 }'),
      'order.yaml:22: offcuts[0].book value must be at least $0.72, what a whole one is worth as an offcut; found 0.60',
    ],
  ])('%s', (_name, order, fault) => {
    expect(faultsOf(order)).toEqual([fault]);
  });
});
