import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyNeutralAxis, anyOutline, between, orSkip } from './any-outline.test.support.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import { neutralAxis } from './bend-rules/neutral-axis.js';
import { zeroThickness } from './bend-rules/zero-thickness.js';
import { develop } from './develop.js';
import { perimeter } from './measure.js';
import type { Segment } from './outline.js';
import { circle } from './outlines/circle.js';
import { heart } from './outlines/heart.js';
import { rectangle } from './outlines/rectangle.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { point } from './point.js';
import { arc, line } from './segment.js';

const runLengths = (path: readonly Segment[], bendRule: BendRule) =>
  develop(path, { bendRule, closed: false, metal: 'inside' }).runs.map(({ from, to }) => to - from);

describe('open paths, given by their outer mould lines', () => {
  const legs = (...lengths: readonly number[]): Segment[] => {
    const headings = [point(0, -1), point(1, 0), point(0, 1), point(-1, 0)];
    let at = point(0, 0);
    return lengths.map((length, index) => {
      const heading = headings[index % 4] ?? at;
      const from = at;
      at = point(from.x + heading.x * length, from.y + heading.y * length);
      return line(from, at);
    });
  };

  // FAA-H-8083-31, Airframe, chapter 4, bending a U-channel of .040 2024-T3: R .16, mould lines
  // 1.00, 2.00, 1.00 in. Setback .2, flats .8, 1.6, .8. The empirical allowance
  // 90 (0.01743 R + 0.0078 T) gives .279 each, 3.76 in all (from memory). The handbook's
  // 0.01743 for pi / 180 shortens each bend by 0.0003.
  test('the U-channel of the airframe handbook', () => {
    const bendRule = neutralAxis({
      thickness: 0.04,
      insideRadius: 0.16,
      factor: 0.0078 / 0.01743,
    });
    const [flat, bend, middle, secondBend, last] = runLengths(legs(1, 2, 1), bendRule);
    expect(flat).toBeCloseTo(0.8, 12);
    expect(middle).toBeCloseTo(1.6, 12);
    expect(last).toBeCloseTo(0.8, 12);
    const asPrinted = (0.01743 * 180) / Math.PI;
    expect((bend ?? 0) * asPrinted).toBeCloseTo(0.279072, 9);
    expect(secondBend).toBeCloseTo(bend ?? 0, 12);
    const { length } = develop(legs(1, 2, 1), { bendRule, closed: false, metal: 'inside' });
    expect(length).toBeCloseTo(3.76, 2);
  });

  // Sheet Metal Work Book, 6th ed.: T .050, R .032, outside dimensions .740 .420 1.050 1.000,
  // three bends with a deduction of .079 each; the book's flat length is 2.973.
  test('a part with three bends from the work book', () => {
    const bendRule = neutralAxis({
      thickness: 0.05,
      insideRadius: 0.032,
      factor: 0.0078 / 0.01743,
    });
    const path = legs(0.74, 0.42, 1.05, 1);
    const { length } = develop(path, { bendRule, closed: false, metal: 'inside' });
    // Each deduction is printed to three places.
    expect(Math.abs(length - 2.973)).toBeLessThanOrEqual(3 * 0.0005);
  });

  // Sheet Metal Work Book, 6th ed., problem set: inputs from the book; flat lengths recomputed
  // with .017453 and .0078 for each degree.
  test.each([
    [3 / 32, 0.063, 120, 2.125, 1.75, 3.587],
    [3 / 32, 0.063, 90, 1.75, 1.875, 3.503],
    [3 / 32, 0.063, 45, 2, 2, 3.966],
    [1 / 8, 0.075, 120, 2.125, 1.75, 3.514],
    [1 / 16, 0.048, 95, 1.625, 3, 4.523],
    [1 / 16, 0.048, 15, 0.75, 1, 1.743],
  ])('R %d, T %d, %d degrees', (insideRadius, thickness, degrees, first, second, flat) => {
    const bendRule = neutralAxis({ thickness, insideRadius, factor: 0.0078 / 0.017453 });
    const angle = (degrees * Math.PI) / 180;
    const end = point(second * Math.cos(angle), second * Math.sin(angle));
    const path = [line(point(-first, 0), point(0, 0)), line(point(0, 0), end)];
    const { length } = develop(path, { bendRule, closed: false, metal: 'inside' });
    expect(length).toBeCloseTo(flat, 3);
  });

  test('metal on the other side of a corner loses only the inside radius', () => {
    const bendRule = neutralAxis({ thickness: 0.3, insideRadius: 0.5, factor: 0.4 });
    const options = { bendRule, closed: false } as const;
    const { runs } = develop(legs(10, 10), { ...options, metal: 'outside' });
    const bend = (Math.PI / 2) * 0.62;
    expect(runs.map(({ kind }) => kind)).toEqual(['flat', 'bend', 'flat']);
    expect(runs[0]?.to).toBeCloseTo(9.5, 12);
    expect(runs[1]?.to).toBeCloseTo(9.5 + bend, 12);
    expect(runs[2]?.to).toBeCloseTo(19 + bend, 12);
  });
});

describe('curves', () => {
  const bendRule = neutralAxis({ thickness: 0.3, insideRadius: 0.5, factor: 0.4 });

  // Elementary: once round at the neutral line, half the thickness beyond the inside face.
  test.each([
    ['outside', 2 * Math.PI * 35.15],
    ['inside', 2 * Math.PI * 34.85],
  ] as const)('a circle with its metal %s the line', (metal, expected) => {
    const { segments } = circle.draw({ across: 70 });
    const { length, runs } = develop(segments, { bendRule, closed: true, metal });
    expect(length).toBeCloseTo(expected, 9);
    expect(runs).toEqual([
      {
        kind: 'curve',
        from: 0,
        to: length,
        radius: 35,
        even: true,
        direction: 'in',
        angle: expect.closeTo(360, 9),
        shape: { segment: segments[0], start: 0, end: expect.closeTo(2 * Math.PI * 35, 9) },
      },
    ]);
  });

  test('a curve away from the inside is measured from its own inside face', () => {
    const path = [arc(point(10, 0), point(0, 0), -1)];
    const { length } = develop(path, { bendRule, closed: false, metal: 'outside' });
    expect(length).toBeCloseTo(9.85, 12);
    const tight = [arc(point(1, 0), point(0, 0), -1)];
    // Inside radius 0.7, within five thicknesses, so the factor applies.
    expect(develop(tight, { bendRule, closed: false, metal: 'outside' }).length).toBeCloseTo(
      0.7 + 0.12,
      12,
    );
  });

  test('refuses a curve tighter than the metal', () => {
    const path = [arc(point(0.2, 0), point(0, 0), -1)];
    expect(() => develop(path, { bendRule, closed: false, metal: 'outside' })).toThrow(
      expect.objectContaining({ name: 'BendError', code: 'too tight' }),
    );
  });
});

// Theorem of the offset curve (Steiner): a closed curve that turns once round is longer by
// 2 pi d at a distance d outside.
describe('closed smooth outlines lengthen by 2 pi d', () => {
  const smooth = fc
    .record({ long: between(50, 200), flat: between(0.3, 1), rounding: between(0.5, 1) })
    .map(({ long, flat, rounding }) => {
      const wide = long * flat;
      return rectangle.draw({ long, wide, 'corner radius': (rounding * wide) / 2 });
    });

  test('d is half the thickness in gentle curves', () => {
    fc.assert(
      fc.property(smooth, between(0.1, 0.5), between(0, 1), (outline, thickness, factor) => {
        const bendRule = neutralAxis({ thickness, insideRadius: 1, factor });
        const options = { bendRule, closed: true } as const;
        const length = perimeter(outline);
        const outside = develop(outline.segments, { ...options, metal: 'outside' }).length;
        const inside = develop(outline.segments, { ...options, metal: 'inside' }).length;
        expect(outside - length).toBeCloseTo(Math.PI * thickness, 9);
        expect(inside - length).toBeCloseTo(-Math.PI * thickness, 9);
      }),
    );
  });

  // With sharp corners and no radius every corner is a full fan about itself, so it counts too.
  test('and so do convex outlines with sharp corners bent without a radius', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 20 }),
        between(20, 200),
        between(0.1, 0.5),
        between(0, 1),
        (sides, across, thickness, factor) => {
          const outline = regularPolygon.draw({ sides, 'across corners': across });
          const bendRule = neutralAxis({ thickness, insideRadius: 0, factor });
          const { segments } = outline;
          const { length } = develop(segments, { bendRule, closed: true, metal: 'outside' });
          expect(length - perimeter(outline)).toBeCloseTo(2 * Math.PI * factor * thickness, 9);
        },
      ),
    );
  });
});

test('runs join end to end, from 0 to the length', () => {
  const anyRule = fc.oneof(anyNeutralAxis, fc.constant(zeroThickness()));
  fc.assert(
    fc.property(anyOutline, anyRule, (outline, bendRule) => {
      const options = { bendRule, closed: true, metal: 'outside' } as const;
      const { length, runs } = orSkip(() => develop(outline.segments, options));
      let at = 0;
      for (const { from, to } of runs) {
        expect(from).toBe(at);
        expect(to).toBeGreaterThanOrEqual(from);
        at = to;
      }
      expect(at).toBe(length);
    }),
  );
});

test('without thickness the length is the perimeter', () => {
  fc.assert(
    fc.property(anyOutline, (outline) => {
      const options = { bendRule: zeroThickness(), closed: true } as const;
      for (const metal of ['outside', 'inside'] as const) {
        const { length } = develop(outline.segments, { ...options, metal });
        expect(length / perimeter(outline)).toBeCloseTo(1, 9);
      }
    }),
  );
});

test('refuses a flat that its bends use up, with both lengths', () => {
  const bendRule = neutralAxis({ thickness: 1, insideRadius: 2, factor: 0.4 });
  const { segments } = rectangle.draw({ long: 30, wide: 5 });
  const refused = () => develop(segments, { bendRule, closed: true, metal: 'inside' });
  expect(refused).toThrow(expect.objectContaining({ name: 'BendError', code: 'no room' }));
  // tan 45 * (2 + 1) at each end.
  expect(refused).toThrow('Segment 2, the flat from (30, 0) to (30, 5), is 5 mm long');
  expect(refused).toThrow('need 6 mm');
});

test('a flat that its bends just use up is left out', () => {
  const bendRule = neutralAxis({ thickness: 1, insideRadius: 2, factor: 0.4 });
  const { segments } = rectangle.draw({ long: 30, wide: 6 });
  const { runs } = develop(segments, { bendRule, closed: true, metal: 'inside' });
  expect(runs.map(({ kind }) => kind)).toEqual(['flat', 'bend', 'bend', 'flat', 'bend', 'bend']);
});

test('the point of a heart too small for its bend is refused', () => {
  const bendRule = neutralAxis({ thickness: 0.3, insideRadius: 20, factor: 0.4 });
  const { segments } = heart.draw({ across: 30 });
  expect(() => develop(segments, { bendRule, closed: true, metal: 'outside' })).toThrow(
    expect.objectContaining({ name: 'BendError' }),
  );
});
