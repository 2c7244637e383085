import { describe, expect, test } from 'vitest';
import { metalSpelt, readThickness } from './thickness.js';

const read = (text: string, metal = 'tinplate') => readThickness(text, metalSpelt(metal), 'in');
const inches = (text: string, metal?: string) => {
  const thickness = read(text, metal);
  return thickness.ok ? thickness.value / 25.4 : undefined;
};

describe('a thickness as the trade gives it', () => {
  // A base box of 31,360 square inches of steel that weighs 0.2836 lb a cubic inch: 0.00011 in a pound.
  test.each(['100 lb', '100lb', '100 lbs', '100 pounds'])('%s of tinplate', (text) => {
    expect(inches(text)).toBeCloseTo(0.011, 6);
  });

  // Published charts of both tables, side by side: 28 gauge is 0.0149 in and 0.0187 in.
  test.each(['28 ga', '28ga', '28 gauge', 'gauge 28', '28 ga.'])('%s of steel', (text) => {
    expect(inches(text, 'uncoated steel')).toBeCloseTo(0.0149, 9);
    expect(inches(text, 'Galvanized-Steel')).toBeCloseTo(0.0187, 9);
  });

  // Published charts of copper sheet: 16 oz a square foot is 0.0216 in, to their last digit.
  test.each(['16 oz', '16oz', '16 ounces'])('%s of copper', (text) => {
    expect(inches(text, 'copper')).toBeCloseTo(0.0216, 3);
  });

  test('or as a length, of any metal', () => {
    expect(inches('0.011', 'brass')).toBeCloseTo(0.011, 12);
    expect(inches('0.28 mm')).toBeCloseTo(0.28 / 25.4, 12);
  });
});

describe('a thickness that cannot be', () => {
  test.each(['thick', '', '100 kg', '28 ga 3'])('%j is none', (text) => {
    const refused = read(text);
    expect(refused.ok).toBe(false);
  });

  test.each([
    ['28 ga', 'tinplate', 'a gauge'],
    ['28 ga', 'copper', 'a gauge'],
    ['100 lb', 'copper', 'pounds a base box'],
    ['16 oz', 'uncoated steel', 'ounces a square foot'],
  ])('%s is not how %s is sold', (text, metal, measure) => {
    expect(read(text, metal)).toMatchObject({
      ok: false,
      complaint: { code: 'measure of another metal', measure, metal },
    });
  });

  test('a gauge that the table does not know, and no thickness at all', () => {
    expect(read('3 ga', 'uncoated steel')).toMatchObject({ complaint: { code: 'metal' } });
    expect(read('0 lb')).toMatchObject({ complaint: { code: 'metal' } });
    expect(read('0')).toMatchObject({ complaint: { code: 'must be above zero' } });
  });
});
