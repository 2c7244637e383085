import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  anyNeutralAxis,
  anyOutline,
  anySize,
  between,
  orSkip,
} from './any-outline.test.support.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import { neutralAxis } from './bend-rules/neutral-axis.js';
import { zeroThickness } from './bend-rules/zero-thickness.js';
import { perimeter } from './measure.js';
import type { Outline } from './outline.js';
import { circle } from './outlines/circle.js';
import { heart } from './outlines/heart.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { star } from './outlines/star.js';
import { point } from './point.js';
import { arc, line, reversedPath } from './segment.js';
import { makeStrip } from './strip.js';
import { mirrored, scaled, turned } from './transform.js';

const INCH = 25.4;
const bench = { depth: 25.4, hem: 6.35, tab: 5, bendRule: zeroThickness() };
const metal = {
  ...bench,
  bendRule: neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 }),
};

describe('the bench rule', () => {
  // Common practice: ten sides of 1 5/8 in and a tab of 3/4 in take 17 in, which is 431.8 mm.
  test('ten sides and a tab', () => {
    const outline = regularPolygon.draw({ sides: 10, side: 1.625 * INCH });
    const strip = makeStrip({ ...bench, outline, tab: 0.75 * INCH });
    expect(strip.length).toBeCloseTo(17 * INCH, 9);
    expect(strip.length).toBeCloseTo(431.8, 9);
    expect(strip.bends.map(({ at }) => at / INCH)).toEqual(
      Array.from({ length: 10 }, (_, side) => expect.closeTo((side + 1) * 1.625, 9)),
    );
    for (const { angle, direction } of strip.bends) {
      expect(angle).toBeCloseTo(36, 9);
      expect(direction).toBe('in');
    }
  });

  // NAVEDTRA 14251, Steelworker vol. 2, chapter 2: the allowance of a single hem is its width.
  test('the width is the depth plus the hem', () => {
    const outline = circle.draw({ across: 70 });
    const strip = makeStrip({ ...bench, outline, depth: 0.5 * INCH, hem: 0.125 * INCH });
    expect(strip.width).toBeCloseTo(0.625 * INCH, 12);
    expect(strip).toMatchObject({ depth: 0.5 * INCH, hem: 0.125 * INCH, tab: 5 });
  });
});

test('a rectangle by the neutral axis: four flats, four bends, the last at the seam', () => {
  const outline = rectangle.draw({ long: 90, wide: 32 });
  const { bends, developed, length } = makeStrip({ ...metal, outline });
  // By hand: each flat loses the inside radius, 0.4, at either end; each bend takes
  // pi / 2 (0.4 + 0.44 * 0.28).
  const bend = (Math.PI / 2) * 0.5232;
  expect(developed).toBeCloseTo(2 * (90 + 32) - 8 * 0.4 + 4 * bend, 9);
  expect(length).toBeCloseTo(developed + 5, 12);
  expect(bends.map(({ number }) => number)).toEqual([1, 2, 3, 4]);
  expect(bends[0]).toEqual({
    number: 1,
    from: expect.closeTo(89.2, 9),
    at: expect.closeTo(89.2 + bend / 2, 9),
    to: expect.closeTo(89.2 + bend, 9),
    direction: 'in',
    angle: expect.closeTo(90, 9),
  });
  expect(bends[3]?.to).toBe(developed);
});

test('a star bends in at its tips and out between them', () => {
  const { bends } = makeStrip({ ...metal, outline: star.draw({ points: 5, across: 80 }) });
  expect(bends.map(({ direction }) => direction)).toEqual([
    ...['out', 'in', 'out', 'in', 'out'],
    ...['in', 'out', 'in', 'out', 'in'],
  ]);
});

test('a circle has no bend, only the curve', () => {
  const { bends, curves, developed } = makeStrip({
    ...metal,
    outline: circle.draw({ across: 70 }),
  });
  expect(bends).toEqual([]);
  expect(curves).toHaveLength(1);
  expect(curves[0]).toMatchObject({ from: 0, to: developed, radius: 35, direction: 'in' });
});

test('a heart has a bend at its cleft and one at its point, where the seam is', () => {
  const { bends, curves, developed } = makeStrip({
    ...metal,
    outline: heart.draw({ across: 100 }),
  });
  expect(bends.map(({ direction }) => direction)).toEqual(['out', 'in']);
  expect(bends[1]?.to).toBe(developed);
  expect(curves).toHaveLength(2);
});

const anyRule: fc.Arbitrary<BendRule> = fc.oneof(fc.constant(zeroThickness()), anyNeutralAxis);

function stripOf(outline: Outline, bendRule: BendRule, tab = 0) {
  return orSkip(() => makeStrip({ outline, depth: 20, hem: 5, tab, bendRule }));
}

describe('for every outline', () => {
  test('bends are numbered, ascending and inside the strip', () => {
    fc.assert(
      fc.property(anyOutline, anyRule, between(0, 2), (outline, rule, tab) => {
        const { bends, length, developed } = stripOf(outline, rule, tab);
        expect(length).toBe(developed + tab);
        let last = 0;
        bends.forEach(({ number, from, at, to }, index) => {
          expect(number).toBe(index + 1);
          expect(from).toBeGreaterThanOrEqual(last);
          expect(at).toBeGreaterThanOrEqual(from);
          expect(to).toBeGreaterThanOrEqual(at);
          last = to;
        });
        expect(last).toBeLessThanOrEqual(developed);
      }),
    );
  });

  // Theorem of turning tangents (Hopf).
  test('bends and curves turn through 360 degrees in all', () => {
    fc.assert(
      fc.property(anyOutline, anyRule, (outline, rule) => {
        const { bends, curves } = stripOf(outline, rule);
        const turned = [...bends, ...curves].reduce(
          (sum, { direction, angle }) => sum + (direction === 'in' ? angle : -angle),
          0,
        );
        expect(turned).toBeCloseTo(360, 6);
      }),
    );
  });

  test('by the bench rule the strip is as long as the outline, whatever its size', () => {
    fc.assert(
      fc.property(anyOutline, between(0.2, 5), (outline, factor) => {
        const { developed } = stripOf(outline, zeroThickness());
        expect(developed / perimeter(outline)).toBeCloseTo(1, 9);
        const larger = stripOf(scaled(outline, factor), zeroThickness());
        expect(larger.developed / developed).toBeCloseTo(factor, 9);
      }),
    );
  });

  test('turning, mirroring or starting elsewhere does not change the length', () => {
    fc.assert(
      fc.property(
        anyOutline,
        anyRule,
        between(-4, 4),
        fc.nat(30),
        (outline, rule, angle, start) => {
          const { developed, bends } = stripOf(outline, rule);
          const at = start % outline.segments.length;
          const segments = [...outline.segments.slice(at), ...outline.segments.slice(0, at)];
          for (const same of [
            mirrored(outline),
            turned(outline, angle),
            { ...outline, segments },
          ]) {
            const strip = stripOf(same, rule);
            expect(strip.developed / developed).toBeCloseTo(1, 8);
            expect(strip.bends).toHaveLength(bends.length);
          }
        },
      ),
    );
  });
});

test('the same polygon in thicker metal takes a longer strip', () => {
  fc.assert(
    fc.property(anySize, fc.integer({ min: 3, max: 12 }), (across, sides) => {
      const outline = regularPolygon.draw({ sides, 'across corners': across });
      const lengths = [0.2, 0.3, 0.4].map((thickness) => {
        const bendRule = neutralAxis({ thickness, insideRadius: 0.1, factor: 0.44 });
        return makeStrip({ ...bench, bendRule, outline }).length;
      });
      const [thin, usual, thick] = lengths;
      expect(usual).toBeGreaterThan(thin ?? Number.NaN);
      expect(thick).toBeGreaterThan(usual ?? Number.NaN);
    }),
  );
});

const square = rectangle.draw({ long: 30, wide: 30 });

test.each([
  ['depth', { depth: 0 }],
  ['depth', { depth: -1 }],
  ['depth', { depth: Number.NaN }],
  ['depth', { depth: Number.POSITIVE_INFINITY }],
  ['hem', { hem: -0.1 }],
  ['hem', { hem: Number.NaN }],
  ['tab', { tab: -0.1 }],
  ['tab', { tab: Number.POSITIVE_INFINITY }],
  ['tab', { tab: 31 }],
])('refuses a bad %s: %o', (field, wrong) => {
  expect(() => makeStrip({ ...bench, outline: square, ...wrong })).toThrow(
    expect.objectContaining({ name: 'StripError', field }),
  );
});

test('a raw edge and a butt joint are allowed', () => {
  const strip = makeStrip({ ...bench, outline: square, hem: 0, tab: 0 });
  expect([strip.width, strip.length]).toEqual([25.4, expect.closeTo(120, 9)]);
});

test('refuses an outline that is not sound', () => {
  const outline = { ...square, segments: reversedPath(square.segments) };
  expect(() => makeStrip({ ...bench, outline })).toThrow(
    expect.objectContaining({ name: 'OutlineError', code: 'clockwise' }),
  );
});

test('refuses a corner that folds straight back', () => {
  // Two half circles side by side, which meet straight down and straight up.
  const [start, corner, end] = [point(0, 0), point(0, -5), point(20, -5)];
  const first = arc(point(20, 0), point(15, 0), Math.PI);
  const second = arc(first.to, point(5, 0), Math.PI);
  const base = [line(start, corner), line(corner, end), line(end, first.from)];
  const outline = { name: 'two lobes', segments: [...base, first, { ...second, to: start }] };
  expect(() => makeStrip({ ...bench, outline })).toThrow(
    expect.objectContaining({ name: 'BendError', code: 'folded flat' }),
  );
});

// The offset theorem: a circle's strip is pi times the diameter of its neutral line.
test('the cutter of a hole lies inside its line, where that of a cookie lies outside', () => {
  const outline = circle.draw({ across: 30 });
  const bendRule = neutralAxis({ thickness: 1, insideRadius: 1, factor: 0.5 });
  const spec = { depth: 25, hem: 0, tab: 0, bendRule };
  const hole = { ...outline, hole: true };
  expect(makeStrip({ ...spec, outline }).developed).toBeCloseTo(Math.PI * 31, 9);
  expect(makeStrip({ ...spec, outline: hole }).developed).toBeCloseTo(Math.PI * 29, 9);
  expect(makeStrip({ ...spec, outline: hole, sizeIs: 'outside' }).developed).toBeCloseTo(
    Math.PI * 31,
    9,
  );
  expect(makeStrip({ ...spec, outline: hole, sizeIs: 'middle' }).developed).toBeCloseTo(
    Math.PI * 30,
    9,
  );
});
