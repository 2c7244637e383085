import { describe, expect, test } from 'vitest';
import { bounds } from '../measure.js';
import { readSvg } from './read-svg.js';

/** Bounds of a 10 by 20 rectangle at (0, 0) of the drawing, in millimetres. */
function boxIn(attributes: string) {
  const [outline] = readSvg(`<svg ${attributes}><rect width="10" height="20"/></svg>`);
  if (outline === undefined) {
    throw new Error('no outline');
  }
  return bounds(outline);
}

// CSS Values and Units, "absolute lengths": 1in = 2.54cm = 25.4mm = 96px = 72pt = 6pc = 101.6Q.
test.each([
  ['1in', 25.4],
  ['96px', 25.4],
  ['96', 25.4],
  ['72pt', 25.4],
  ['6pc', 25.4],
  ['2.54cm', 25.4],
  ['25.4mm', 25.4],
  ['101.6Q', 25.4],
  ['1e1mm', 10],
])('a width of %s is %d mm', (width, expected) => {
  expect(boxIn(`width="${width}" viewBox="0 0 10 20"`).across).toBeCloseTo(expected, 10);
  const [circle] = readSvg(`<svg><circle r="${width}"/></svg>`);
  expect(circle && bounds(circle).across).toBeCloseTo(2 * expected, 10);
});

describe('without a size, a unit is one px', () => {
  test.each(['', 'viewBox="0 0 10 20"', 'width="100%" height="auto" viewBox="0 0 40 40"'])(
    '%s',
    (attributes) => {
      expect(boxIn(attributes).across).toBeCloseTo((10 * 25.4) / 96, 10);
    },
  );
});

describe('one size stands in for the other', () => {
  test.each(['width="100mm"', 'height="200mm"', 'width="100mm" height="200mm"'])('%s', (size) => {
    const { across, high, bottom, left } = boxIn(`${size} viewBox="0 0 10 20"`);
    expect(across).toBeCloseTo(100, 9);
    expect(high).toBeCloseTo(200, 9);
    expect(bottom).toBeCloseTo(0, 9);
    expect(left).toBeCloseTo(0, 9);
  });
});

// SVG 1.1, 7.8: meet fits the view box inside, slice covers with it, none stretches;
// the rest of the space is shared as the alignment tells.
describe('preserveAspectRatio, for a view box of 10 by 20 on a page of 100 by 100 mm', () => {
  test.each<[string, number, number, number]>([
    ['', 5, 25, 0],
    ['xMidYMid', 5, 25, 0],
    ['xMinYMin meet', 5, 0, 0],
    ['xMaxYMax', 5, 50, 0],
    ['xMidYMid slice', 10, 0, -50],
    ['xMinYMin slice', 10, 0, -100],
    ['xMinYMax slice', 10, 0, 0],
    ['defer xMidYMid', 5, 25, 0],
  ])('%s', (alignment, scale, left, bottom) => {
    const given = alignment === '' ? '' : `preserveAspectRatio="${alignment}"`;
    const box = boxIn(`width="100mm" height="100mm" viewBox="0 0 10 20" ${given}`);
    expect(box.across).toBeCloseTo(10 * scale, 9);
    expect(box.high).toBeCloseTo(20 * scale, 9);
    expect(box.left).toBeCloseTo(left, 9);
    expect(box.bottom).toBeCloseTo(bottom, 9);
  });

  test('none', () => {
    const box = boxIn(
      'width="100mm" height="100mm" viewBox="0 0 10 20" preserveAspectRatio="none"',
    );
    expect(box.across).toBeCloseTo(100, 9);
    expect(box.high).toBeCloseTo(100, 9);
  });

  test('nonsense is refused', () => {
    expect(() => boxIn('width="9" viewBox="0 0 1 2" preserveAspectRatio="left"')).toThrow('"left"');
  });
});

test('the view box may start anywhere', () => {
  const box = boxIn('width="100mm" height="200mm" viewBox="-5 -5 20 40"');
  expect(box.left).toBeCloseTo(25, 9);
  expect(box.top).toBeCloseTo(175, 9);
});

// SVG 1.1, 7.10: of the width, the height, or the diagonal over the square root of 2.
test('percentages are taken of the view box', () => {
  const [box, circle] = readSvg(
    `<svg width="30mm" height="40mm" viewBox="0 0 30 40"><rect width="50%" height="25%"/>
     <circle cx="15" cy="20" r="10%"/></svg>`,
  );
  expect(box && bounds(box).top).toBeCloseTo(40, 9);
  expect(box && bounds(box).across).toBeCloseTo(15, 9);
  expect(box && bounds(box).high).toBeCloseTo(10, 9);
  expect(circle && bounds(circle).across).toBeCloseTo((2 * 0.1 * 50) / Math.SQRT2, 9);
});
