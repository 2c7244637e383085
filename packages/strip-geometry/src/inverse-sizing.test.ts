import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyNeutralAxis, anyOutline, between } from './any-outline.test.support.js';
import { BendError } from './bend-rules/bend-error.js';
import { neutralAxis } from './bend-rules/neutral-axis.js';
import { zeroThickness } from './bend-rules/zero-thickness.js';
import { largestOfFamily, largestThatFits } from './inverse-sizing.js';
import { perimeter } from './measure.js';
import { circle } from './outlines/circle.js';
import { families } from './outlines/families.js';
import type { OutlineSizes } from './outlines/family.js';
import { polygon } from './outlines/polygon.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { makeStrip } from './strip.js';
import { StripError } from './strip-error.js';
import { scaled } from './transform.js';

const INCH = 25.4;
const bench = { depth: 25, hem: 6, tab: 0.75 * INCH, bendRule: zeroThickness() };
const metal = neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 });

// Common practice: ten sides of 1 5/8 in and a tab of 3/4 in take 17 in.
test('17 in of strip give ten sides of 1 5/8 in', () => {
  const { sizes, strip } = largestOfFamily(
    regularPolygon,
    { sides: 10, side: 1 },
    bench,
    17 * INCH,
  );
  expect(sizes.sides).toBe(10);
  expect(Number(sizes.side) / INCH).toBeCloseTo(1.625, 7);
  expect(strip.length / INCH).toBeCloseTo(17, 7);
});

// The middle line of a ring is pi (D + T) long (common practice).
test('a circle, with its thickness', () => {
  const cutter = { ...bench, tab: 10, bendRule: metal };
  const { sizes } = largestOfFamily(circle, { across: 80 }, cutter, 300);
  expect(sizes.across).toBeCloseTo(290 / Math.PI - 0.28, 6);
});

test('what it finds is just short enough, and a little larger would be too long', () => {
  fc.assert(
    fc.property(
      anyOutline,
      anyNeutralAxis,
      between(0, 8),
      between(300, 900),
      (outline, bendRule, tab, length) => {
        const cutter = { ...bench, tab, bendRule };
        let found: ReturnType<typeof largestThatFits>;
        try {
          found = largestThatFits(outline, cutter, length);
        } catch (error) {
          fc.pre(!(error instanceof StripError));
          throw error;
        }
        const { scale, strip } = found;
        const again = makeStrip({ ...cutter, outline: scaled(outline, scale) });
        expect([strip.length, strip.runs]).toEqual([again.length, again.runs]);
        expect(strip.length).toBeLessThanOrEqual(length);
        // Where a curve becomes gentle the length may jump over the stock's.
        const larger = makeStrip({ ...cutter, outline: scaled(outline, scale * (1 + 1e-7)) });
        expect(larger.length).toBeGreaterThan(length - 1e-6);
        const isAtJump = larger.length > length && larger.length - strip.length > 1e-3;
        expect(length - strip.length <= 1e-6 || isAtJump).toBe(true);
      },
    ),
    { numRuns: 200 },
  );
});

test('sizing a strip and taking the largest of its length gives the outline back', () => {
  fc.assert(
    fc.property(anyOutline, between(0.5, 2), (outline, scale) => {
      const cutter = { ...bench, tab: 0, bendRule: metal };
      let length: number;
      try {
        ({ length } = makeStrip({ ...cutter, outline: scaled(outline, scale) }));
      } catch (error) {
        fc.pre(!(error instanceof BendError));
        throw error;
      }
      const found = largestThatFits(outline, cutter, length);
      // A micrometre of the length's thousandth, as a part of it.
      expect(Math.abs(found.scale / scale - 1) * length).toBeLessThan(1e-5);
    }),
  );
});

test.each(families)('$name: its lengths scale as one, and other sizes stay', (family) => {
  const cutter = { ...bench, tab: 5, bendRule: metal };
  const before = perimeter(family.draw(family.example));
  const { sizes, outline, strip, scale } = largestOfFamily(family, family.example, cutter, 400);
  expect(strip.length).toBeLessThanOrEqual(400);
  expect(400 - strip.length).toBeLessThanOrEqual(1e-6);
  expect(perimeter(outline) / before).toBeCloseTo(scale, 9);
  expect(perimeter(family.draw(sizes))).toBe(perimeter(outline));
  for (const { name, kind } of family.sizes) {
    const [was, is] = [family.example[name], sizes[name]];
    if (kind === 'length' && was !== undefined) {
      expect(Number(is) / Number(was)).toBeCloseTo(scale, 12);
    } else if (kind !== 'corners') {
      expect(is).toBe(was);
    }
  }
});

test('corners are lengths too', () => {
  const corners = [
    { x: 0, y: 0 },
    { x: 3, y: 0 },
    { x: 0, y: 4 },
  ];
  const sizes: OutlineSizes = { corners };
  const found = largestOfFamily(polygon, sizes, { ...bench, tab: 0 }, 240);
  expect(found.scale).toBeCloseTo(20, 6);
  expect(found.sizes.corners).toEqual([
    { x: 0, y: 0 },
    { x: expect.closeTo(60, 6), y: 0 },
    { x: 0, y: expect.closeTo(80, 6) },
  ]);
});

test('says so where every size that is short enough is too small to be bent', () => {
  const outline = rectangle.draw({ long: 60, wide: 3 });
  const coarse = neutralAxis({ thickness: 1, insideRadius: 6, factor: 0.44 });
  const cutter = { ...bench, tab: 0, bendRule: coarse };
  // The short sides need 12 mm for their bends, so the long ones 240 mm.
  expect(largestThatFits(outline, cutter, 520).strip.length).toBeCloseTo(520, 5);
  expect(() => largestThatFits(outline, cutter, 450)).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'length' }),
  );
});

test('says so where the tab fits no side of what is short enough', () => {
  const outline = regularPolygon.draw({ sides: 6, side: 10 });
  const cutter = { ...bench, tab: 40, seamAt: { corner: 1 } };
  expect(largestThatFits(outline, cutter, 281).scale).toBeCloseTo(241 / 60, 6);
  expect(() => largestThatFits(outline, cutter, 100)).toThrow('comes out of 100 mm');
});

test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a length of %d', (length) => {
  const outline = circle.draw({ across: 80 });
  expect(() => largestThatFits(outline, bench, length)).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'length' }),
  );
});

test('faults of the cutter itself are told as such', () => {
  const outline = circle.draw({ across: 80 });
  expect(() => largestThatFits(outline, { ...bench, depth: 0 }, 300)).toThrow('depth');
});
