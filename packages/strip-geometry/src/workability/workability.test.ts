import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyOutline, between, orSkip } from '../any-outline.test.support.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { metals } from '../metal/metals.js';
import type { Outline, Point } from '../outline.js';
import { circle } from '../outlines/circle.js';
import { ellipse } from '../outlines/ellipse.js';
import { heart } from '../outlines/heart.js';
import { oval } from '../outlines/oval.js';
import { plusSign } from '../outlines/plus-sign.js';
import { polygon } from '../outlines/polygon.js';
import { rectangle } from '../outlines/rectangle.js';
import { regularPolygon } from '../outlines/regular-polygon.js';
import { star } from '../outlines/star.js';
import { point } from '../point.js';
import { arcBetween, line } from '../segment.js';
import { type CutterSpec, makeStrip } from '../strip.js';
import { mirrored, moved, turned } from '../transform.js';
import { leastRadii, type WorkabilityLimits } from './limits.js';
import { checkWorkability } from './workability.js';

const metal = neutralAxis({ thickness: 0.3, insideRadius: 0.4, factor: 0.44 });
const plain = { depth: 25, hem: 0, tab: 0, bendRule: metal };

function check(outline: Outline, spec: Partial<CutterSpec> = {}, limits: WorkabilityLimits = {}) {
  return checkWorkability(outline, makeStrip({ ...plain, ...spec, outline }), limits);
}

function codes(warnings: readonly { readonly code: string }[]): string[] {
  return warnings.map(({ code }) => code);
}

function drawn(...corners: readonly (readonly [number, number])[]): Outline {
  return polygon.draw({ corners: corners.map(([x, y]): Point => point(x, y)) });
}

/** A square of 60 with a slot of that width and depth in the middle of its top. */
function slotted(width: number, depth: number): Outline {
  const [left, right] = [30 - width / 2, 30 + width / 2];
  return drawn(
    [0, 0],
    [60, 0],
    [60, 60],
    [right, 60],
    [right, 60 - depth],
    [left, 60 - depth],
    [left, 60],
    [0, 60],
  );
}

test.each([circle, ellipse, oval, rectangle, regularPolygon, star, heart, plusSign])(
  'a $name of the usual size is made without a warning',
  (family) => {
    const outline = family.draw(family.example);
    expect(check(outline, { hem: 5 }, { leastRadius: 1, smallestMark: 0.5 })).toEqual([]);
  },
);

describe('short flats', () => {
  test('a tooth too narrow for the pliers', () => {
    const [warning, ...others] = check(slotted(2.5, 10), {}, { narrowestGap: 0 });
    // By hand: the slot's bottom is 2.5 wide. Its two bends go outward, with the drawn line on
    // their outer face, and take 0.4 + 0.3 each.
    expect(warning).toMatchObject({
      code: 'short flat',
      place: { on: 'flat' },
      measured: expect.closeTo(2.5 - 1.4, 9),
      limit: 3,
      unit: 'mm',
      source: 'common practice',
    });
    expect(others).toEqual([]);
    expect(check(slotted(2.5, 10), {}, { narrowestGap: 0, shortestFlat: 1 })).toEqual([]);
  });

  test('a flat that the seam divides counts whole', () => {
    const outline = regularPolygon.draw({ sides: 6, side: 5 });
    const seamAt = 'middle of the longest flat' as const;
    expect(check(outline, { seamAt, bendRule: zeroThickness() })).toEqual([]);
    const shorter = check(outline, { seamAt, bendRule: zeroThickness() }, { shortestFlat: 5.1 });
    expect(codes(shorter)).toEqual(Array.from({ length: 7 }, () => 'short flat'));
    for (const { measured } of shorter) {
      expect(measured).toBeCloseTo(5, 9);
    }
  });
});

describe('sharp radii', () => {
  test('a bend below what the metal stands', () => {
    const outline = rectangle.draw({ long: 60, wide: 40 });
    expect(check(outline, {}, { leastRadius: 1 })).toEqual([]);
    const found = check(outline, {}, { leastRadius: 2 });
    expect(codes(found)).toEqual(Array.from({ length: 4 }, () => 'sharp radius'));
    expect(found[1]).toMatchObject({ measured: 0.4, limit: 0.6, place: { on: 'bend', bend: 2 } });
  });

  test.each([
    ['inside', 2],
    ['middle', 1.85],
    ['outside', 1.7],
  ] as const)('a curve drawn on the %s has an inside radius of %d', (sizeIs, radius) => {
    const outline = rectangle.draw({ long: 60, wide: 40, 'corner radius': 2 });
    const found = check(outline, { sizeIs }, { leastRadius: 10 });
    expect(codes(found)).toEqual(Array.from({ length: 4 }, () => 'sharp radius'));
    expect(found[0]?.measured).toBeCloseTo(radius, 9);
    expect(found[0]?.place).toMatchObject({ on: 'curve', curve: 1 });
  });

  // A builder's log after AC 43.13-1B: 2024-T3 aluminium of .025 in is bent to 1/16 in or more.
  test('hard aluminium, by the builder’s log', () => {
    const inch = 25.4;
    const bendRule = (insideRadius: number) =>
      neutralAxis({ thickness: 0.025 * inch, insideRadius: insideRadius * inch, factor: 0.5 });
    const outline = rectangle.draw({ long: 60, wide: 40 });
    const leastRadius = 1 / 16 / 0.025;
    expect(check(outline, { bendRule: bendRule(1 / 16) }, { leastRadius })).toEqual([]);
    expect(check(outline, { bendRule: bendRule(1 / 20) }, { leastRadius })).toHaveLength(4);
  });

  test('every metal has its least radius', () => {
    expect(Object.keys(leastRadii).sort()).toEqual(metals.map(({ name }) => name).sort());
  });
});

describe('hems', () => {
  // A hem clears a sharp bend through A with a notch of A / 2 to each side: by hand, 60 for 120.
  test('a hem inside folds further than the widest notch clears', () => {
    const outline = star.draw({ points: 5, across: 90 });
    const bendRule = zeroThickness();
    const inside = check(outline, { hem: 5, hemFace: 'inside', bendRule });
    expect(codes(inside)).toEqual(Array.from({ length: 5 }, () => 'hem in a sharp fold'));
    expect(inside[0]).toMatchObject({
      measured: expect.closeTo(144, 6),
      limit: expect.closeTo(120, 4),
      unit: 'degrees',
      place: { on: 'bend' },
    });
    expect(check(outline, { hem: 5, hemFace: 'outside', bendRule })).toEqual([]);
    expect(check(outline, { hem: 5, hemFace: 'inside', bendRule }, { widestNotch: 73 })).toEqual(
      [],
    );
  });

  test('a hem wider than a flat', () => {
    const outline = slotted(8, 10);
    expect(check(outline, { hem: 6 })).toEqual([]);
    const found = check(outline, { hem: 9 });
    expect(codes(found)).toEqual([
      'hem wider than flat',
      'hem wider than flat',
      'hem wider than flat',
    ]);
    // The bottom loses 2 (R + T), each side R and R + T.
    const lengths = found.map(({ measured }) => measured).sort((one, other) => one - other);
    expect(lengths).toEqual([8 - 1.4, 10 - 1.1, 10 - 1.1].map((flat) => expect.closeTo(flat, 9)));
  });

  test('a hem on the inside of a tight curve', () => {
    const outline = rectangle.draw({ long: 60, wide: 40, 'corner radius': 4 });
    expect(check(outline, { hem: 5 })).toEqual([]);
    const found = check(outline, { hem: 5, hemFace: 'inside' }, { hemStage: 'square' });
    expect(codes(found)).toEqual(Array.from({ length: 4 }, () => 'hem wider than radius'));
    expect(found[0]).toMatchObject({ measured: 4, limit: 5 });
    // Closed before it is bent, it reaches off by its metal alone.
    expect(check(outline, { hem: 5, hemFace: 'inside' })).toEqual([]);
  });
});

describe('pointed corners', () => {
  test('the tip of a cookie, and the slit between two parts', () => {
    const sharp = drawn([0, 0], [60, 0], [60, 40], [34, 40], [30, 12], [26, 40], [0, 40]);
    const [warning, ...others] = check(sharp, { bendRule: zeroThickness() }, { narrowestGap: 0 });
    expect(warning).toMatchObject({
      code: 'pointed corner',
      measured: expect.closeTo((2 * Math.atan(4 / 28) * 180) / Math.PI, 6),
      limit: 30,
    });
    expect(warning?.message).toContain('between two parts');
    expect(others).toEqual([]);
    const tip = check(drawn([0, 0], [60, 12], [0, 24]), { bendRule: zeroThickness() });
    expect(codes(tip)).toEqual(['pointed corner']);
    expect(tip[0]?.message).toContain('tip of the cookie');
    expect(check(drawn([0, 0], [60, 12], [0, 24]), {}, { mostPointed: 20 })).toEqual([]);
  });
});

describe('narrow gaps', () => {
  const bendRule = zeroThickness();

  test.each([3.9, 3.05, 2])('a slot %d mm wide', (width) => {
    const found = check(slotted(width, 20), { bendRule }, { shortestFlat: 0 });
    expect(codes(found)).toEqual(['narrow gap']);
    expect(found[0]?.measured).toBeCloseTo(width, 9);
    expect(found[0]?.message).toContain('apart');
    expect(
      check(slotted(width, 20), { bendRule }, { shortestFlat: 0, narrowestGap: width }),
    ).toEqual([]);
  });

  test('a slot wider than the limit, or less deep than wide, is left alone', () => {
    expect(check(slotted(4.1, 20), { bendRule }, { shortestFlat: 0 })).toEqual([]);
    expect(check(slotted(3.5, 2), { bendRule }, { shortestFlat: 0 })).toEqual([]);
  });

  test('a thin finger of the cookie', () => {
    const finger = drawn(
      [0, 0],
      [60, 0],
      [60, 20],
      [33, 20],
      [33, 50],
      [30, 50],
      [30, 20],
      [0, 20],
    );
    const found = check(finger, { bendRule });
    expect(codes(found)).toEqual(['narrow gap']);
    expect(found[0]).toMatchObject({ measured: expect.closeTo(3, 9), place: { on: 'outline' } });
    expect(found[0]?.message).toContain('wide');
  });

  // Hollows of radius 20 about (0, 21.5) and (0, -21.5): 3 mm apart at the origin.
  test('a waist between two hollows is told where it is narrowest', () => {
    const x = Math.sqrt(20 ** 2 - 6.5 ** 2);
    const hollow = (from: Point, to: Point, y: number) =>
      arcBetween(from, to, point(0, y), 'clockwise');
    const corners = [
      [-30, -15],
      [-x, -15],
      [x, -15],
      [30, -15],
      [30, 15],
      [x, 15],
      [-x, 15],
      [-30, 15],
    ].map(([left = 0, up = 0]) => point(left, up));
    const segments = corners.map((from, index) => {
      const to = corners[(index + 1) % corners.length] ?? from;
      return index === 1
        ? hollow(from, to, -21.5)
        : index === 5
          ? hollow(from, to, 21.5)
          : line(from, to);
    });
    const found = check({ name: 'bone', segments }, { bendRule });
    expect(codes(found)).toEqual(['narrow gap']);
    expect(found[0]?.measured).toBeGreaterThan(2.99);
    expect(found[0]?.measured).toBeLessThan(3.02);
    const { place } = found[0] ?? {};
    expect(place?.on === 'outline' && Math.abs(place.from.x)).toBeLessThan(0.8);
  });

  test('turned, moved or mirrored, the same gap is found', () => {
    fc.assert(
      fc.property(between(-3, 3), between(-90, 90), between(1, 3.7), (angle, x, width) => {
        const outline = slotted(width, 20);
        for (const other of [
          turned(outline, angle),
          moved(outline, { x, y: -x }),
          mirrored(outline),
        ]) {
          const found = check(other, { bendRule }, { shortestFlat: 0 });
          expect(codes(found)).toEqual(['narrow gap']);
          expect(found[0]?.measured).toBeCloseTo(width, 6);
        }
      }),
      { numRuns: 30 },
    );
  });
});

test('marks that a rule cannot tell apart', () => {
  const outline = regularPolygon.draw({ sides: 12, side: 4 });
  expect(check(outline, { bendRule: zeroThickness() }, { smallestMark: 1 })).toEqual([]);
  const found = check(outline, { bendRule: zeroThickness() }, { smallestMark: 5 });
  expect(codes(found)).toEqual(Array.from({ length: 11 }, () => 'crowded marks'));
  expect(found[0]).toMatchObject({ measured: expect.closeTo(4, 9), limit: 5 });
});

test('every warning is beyond its limit, is somewhere on the strip, and says both figures', () => {
  fc.assert(
    fc.property(
      anyOutline,
      fc.constantFrom<'inside' | 'outside'>('inside', 'outside'),
      (outline, hemFace) => {
        const strip = orSkip(() => makeStrip({ ...plain, outline, hem: 6, hemFace }));
        for (const warning of checkWorkability(outline, strip, {
          leastRadius: 2,
          smallestMark: 1,
        })) {
          const { measured, limit, place, message, source } = warning;
          expect(warning.code === 'hem in a sharp fold' ? limit : measured).toBeLessThan(
            warning.code === 'hem in a sharp fold' ? measured : limit,
          );
          expect(message).toContain(String(Number(measured.toFixed(4))));
          expect(source).not.toBe('');
          if (place.on !== 'outline') {
            expect(place.from).toBeGreaterThanOrEqual(0);
            expect(place.to).toBeLessThanOrEqual(strip.length + 1e-9);
          }
        }
      },
    ),
  );
});

test.each([
  ['shortestFlat', -1],
  ['leastRadius', Number.NaN],
  ['widestNotch', 91],
  ['mostPointed', 181],
  ['narrowestGap', -0.5],
])('refuses a bad %s', (field, value) => {
  expect(() => check(circle.draw({ across: 60 }), {}, { [field]: value })).toThrow(
    expect.objectContaining({ name: 'StripError', field }),
  );
});
