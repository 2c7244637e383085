import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  BASE_BOX_SQUARE_INCHES,
  baseWeightPerSquareMetre,
  baseWeightThickness,
} from './base-weight.js';
import { copperThickness, copperWeights } from './copper-weight.js';
import { INCH } from './inch.js';
import { MetalError } from './metal-error.js';
import { foodWarning, metalNamed, metals, sheetWeight } from './metals.js';
import { type GaugeTable, gaugesOf, gaugeThickness } from './sheet-gauge.js';
import { sheetThickness } from './sheet-thickness.js';

const named = (name: string) => metalNamed(name) ?? expect.fail(`no metal ${name}`);

describe('tinplate', () => {
  // TERMIUM Plus (Government of Canada): 112 sheets of 14 x 20 in are 31,360 sq in, 217.78 sq ft.
  test('a base box', () => {
    expect(BASE_BOX_SQUARE_INCHES).toBe(31360);
    expect(BASE_BOX_SQUARE_INCHES / 144).toBeCloseTo(217.78, 2);
    // Customary sheets (common practice): twice as many of 10 x 14 in, half as many of 20 x 28 in.
    for (const [long, wide, sheets] of [
      [14, 20, 112],
      [10, 14, 224],
      [20, 28, 56],
    ] as const) {
      expect(long * wide * sheets).toBe(BASE_BOX_SQUARE_INCHES);
    }
    // The source again: 100 square metres are 4.9426 base boxes; also ASTM A623M, introduction.
    const boxes = 100 / (BASE_BOX_SQUARE_INCHES * (INCH / 1000) ** 2);
    expect(boxes).toBeCloseTo(4.9426, 4);
  });

  // Trade glossaries: base weight * .00011 in, called exact; also ASTM A623 (from memory).
  test.each([
    [55, 0.00605, 0.154],
    [60, 0.0066, 0.168],
    [65, 0.00715, 0.182],
    [70, 0.0077, 0.196],
    [75, 0.00825, 0.21],
    [80, 0.0088, 0.224],
    [85, 0.00935, 0.237],
    [90, 0.0099, 0.251],
    [95, 0.01045, 0.265],
    [100, 0.011, 0.279],
    [107, 0.01177, 0.299],
    [112, 0.01232, 0.313],
    [118, 0.01298, 0.33],
    [128, 0.01408, 0.358],
    [135, 0.01485, 0.377],
    [155, 0.01705, 0.433],
    [168, 0.01848, 0.469],
    [180, 0.0198, 0.503],
  ])('%i lb a base box', (pounds, inches, millimetres) => {
    expect(baseWeightThickness(pounds) / INCH).toBeCloseTo(inches, 12);
    expect(Math.abs(baseWeightThickness(pounds) - millimetres)).toBeLessThanOrEqual(0.00051);
    expect(sheetThickness({ by: 'base weight', pounds })).toBe(baseWeightThickness(pounds));
  });

  // The same, as rounded by trade tables to four places (from memory for 107 and 135 lb).
  test.each([
    [90, 0.0099],
    [107, 0.0118],
    [135, 0.0149],
  ])('%i lb to four places', (pounds, inches) => {
    expect(Math.abs(baseWeightThickness(pounds) / INCH - inches)).toBeLessThanOrEqual(0.0000501);
  });

  // TERMIUM Plus: coating in pounds a base box, and in grams a square metre, both faces.
  test.each([
    [0.1, 2.2],
    [0.25, 5.6],
    [0.5, 11.2],
    [0.75, 16.8],
    [1, 22.4],
  ])('a coating of %f lb', (pounds, grams) => {
    expect(baseWeightPerSquareMetre(pounds) * 1000).toBeCloseTo(grams, 1);
  });

  // TERMIUM prints 7.7 for .35 lb; 7.85 is what a base box makes of it.
  test('a coating of 0.35 lb by the base box', () => {
    expect(baseWeightPerSquareMetre(0.35) * 1000).toBeCloseTo(0.35 * 22.419, 3);
  });
});

describe('gauges', () => {
  // Published charts of the Manufacturers' Standard Gauge beside the galvanized sheet gauge; both
  // also from memory for 24, 26, 28 and 30.
  test.each([
    [20, 0.0359, 0.0396],
    [22, 0.0299, 0.0336],
    [24, 0.0239, 0.0276],
    [25, 0.0209, 0.0247],
    [26, 0.0179, 0.0217],
    [27, 0.0164, 0.0202],
    [28, 0.0149, 0.0187],
    [29, 0.0135, 0.0172],
    [30, 0.012, 0.0157],
    [31, 0.0105, 0.0142],
    [32, 0.0097, 0.0134],
  ])('%i', (gauge, uncoated, galvanized) => {
    expect(gaugeThickness('uncoated', gauge) / INCH).toBeCloseTo(uncoated, 12);
    expect(gaugeThickness('galvanized', gauge) / INCH).toBeCloseTo(galvanized, 12);
    const given = { by: 'gauge', table: 'galvanized', gauge } as const;
    expect(sheetThickness(given) / INCH).toBeCloseTo(galvanized, 12);
  });

  // The Manufacturers' Standard Gauge is defined by 41.82 lb a square foot for an inch of
  // thickness, and by ounces a square foot (15 U.S.C. 206; 22 gauge and finer from memory).
  test.each([
    [20, 24],
    [22, 20],
    [24, 16],
    [25, 14],
    [26, 12],
    [27, 11],
    [28, 10],
    [29, 9],
    [30, 8],
    [31, 7],
    [32, 6.5],
  ])('%i uncoated weighs %f oz a square foot', (gauge, ounces) => {
    const inches = gaugeThickness('uncoated', gauge) / INCH;
    expect(Math.abs(ounces / 16 / 41.82 - inches)).toBeLessThanOrEqual(0.00005);
  });

  test.each<GaugeTable>(['uncoated', 'galvanized'])('a higher number is thinner, %s', (table) => {
    const thicknesses = gaugesOf(table).map((gauge) => gaugeThickness(table, gauge));
    expect(thicknesses).toEqual([...thicknesses].sort((a, b) => b - a));
  });

  test('galvanized is thicker than uncoated of the same number by 0.0037 in', () => {
    for (const gauge of gaugesOf('uncoated')) {
      const zinc = gaugeThickness('galvanized', gauge) - gaugeThickness('uncoated', gauge);
      expect(zinc / INCH).toBeCloseTo(0.0037, 3);
    }
  });
});

// Copper Development Association, Copper in Architecture A4050 (from memory).
test.each([
  [12, 0.0162],
  [16, 0.0216],
  [20, 0.027],
  [24, 0.0323],
  [32, 0.0431],
  [48, 0.0646],
])('copper of %i oz', (ounces, inches) => {
  expect(copperThickness(ounces) / INCH).toBeCloseTo(inches, 12);
  expect(sheetThickness({ by: 'copper weight', ounces })).toBe(copperThickness(ounces));
});

test('copper weighs what its name says, at 8.94 g a cubic centimetre', () => {
  const squareFoot = (12 * INCH) ** 2;
  for (const ounces of copperWeights) {
    const grams = sheetWeight(named('copper'), squareFoot, copperThickness(ounces));
    expect(grams / (ounces * 28.349523125)).toBeCloseTo(1, 2);
  }
});

// Electromechanical Design Handbook, 3rd ed., chapter 11: 1/4 in plate weighs 10.2 lb a square foot.
test('steel weighs 40.8 lb a square foot for an inch of thickness', () => {
  const grams = sheetWeight(named('uncoated steel'), (12 * INCH) ** 2, INCH / 4);
  expect(grams / 453.59237).toBeCloseTo(10.2, 1);
});

describe('food', () => {
  test.each([
    // US FDA Food Code 4-101.15.
    ['galvanized steel', 'not with acidic food', '4-101.15'],
    // US FDA Food Code 4-101.14(A): copper and its alloys not with food below pH 6.
    ['copper', 'not with acidic food', '4-101.14'],
    ['brass', 'not with acidic food', '4-101.14'],
    // US FDA Food Code 4-101.11: corrosion-resistant.
    ['uncoated steel', 'no', '4-101.11'],
    // Council of Europe, technical guide (from memory).
    ['aluminium', 'not with acidic food', 'Council of Europe'],
  ])('%s: %s', (name, mayTouch, source) => {
    const metal = named(name);
    expect(metal.food.mayTouch).toBe(mayTouch);
    const warning = foodWarning(metal);
    expect(warning).toContain(name);
    expect(warning).toContain(source);
    expect(warning).toContain('local codes decide');
  });

  test.each(['tinplate', 'stainless steel'])('%s may touch food', (name) => {
    expect(named(name).food.mayTouch).toBe('yes');
    expect(foodWarning(named(name))).toBeUndefined();
  });

  test('tinplate is told with a word on solder', () => {
    expect(named('tinplate').food.why).toContain('lead-free');
    expect(named('tinplate').food.source).toContain('21 CFR 189.240');
  });
});

test('every metal has its own name, a density and a source', () => {
  expect(new Set(metals.map(({ name }) => name)).size).toBe(metals.length);
  for (const { density, food } of metals) {
    expect(density).toBeGreaterThan(2);
    expect(food.source).not.toBe('');
  }
  expect(metalNamed('paper')).toBeUndefined();
});

test('weight is proportional to area and thickness', () => {
  const positive = fc.double({ min: 0.1, max: 1000, noNaN: true });
  fc.assert(
    fc.property(positive, positive, fc.constantFrom(...metals), (area, thickness, metal) => {
      const weight = sheetWeight(metal, area, thickness);
      expect(sheetWeight(metal, 2 * area, thickness) / weight).toBeCloseTo(2, 9);
      expect(sheetWeight(metal, area, 3 * thickness) / weight).toBeCloseTo(3, 9);
    }),
  );
});

test('millimetres are taken as they are', () => {
  expect(sheetThickness({ by: 'millimetres', thickness: 0.25 })).toBe(0.25);
});

test.each([
  ['base weight', () => baseWeightThickness(0), 'got 0'],
  ['base weight', () => baseWeightPerSquareMetre(Number.NaN), 'got NaN'],
  ['gauge', () => gaugeThickness('uncoated', 21), '20, 22, 24'],
  ['gauge', () => gaugeThickness('galvanized', 24.5), 'got 24.5'],
  ['copper weight', () => copperThickness(17), '12, 16, 20'],
  ['thickness', () => sheetThickness({ by: 'millimetres', thickness: -1 }), 'got -1'],
  ['area', () => sheetWeight(named('brass'), 0, 1), 'got 0'],
])('refuses a bad %s', (field, make, text) => {
  expect(make).toThrow(expect.objectContaining({ name: 'MetalError', field }));
  expect(make).toThrow(MetalError);
  expect(make).toThrow(text);
});
