import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyOutline, orSkip } from '../any-outline.test.support.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { crescent } from '../outlines/crescent.js';
import { ellipse } from '../outlines/ellipse.js';
import { rectangle } from '../outlines/rectangle.js';
import { makeStrip } from '../strip.js';
import { notchesOf } from './notches.js';
import { curveNotices, LEAST_SPACING, reliefRadius, reliefSnips } from './relief-snips.js';

/** A hem that stands square while the strip is bent reaches off by its width. */
const standing = { hemStage: 'square' } as const;

const bench = { depth: 25, hem: 6, tab: 12, bendRule: zeroThickness() };

/** A rectangle whose corners are rounded with a radius, millimetres. */
function rounded(radius: number, hemFace: 'outside' | 'inside' = 'outside') {
  const outline = rectangle.draw({ long: 120, wide: 60, 'corner radius': radius });
  return makeStrip({ ...bench, outline, hemFace });
}

test('the limit is the reach of the hem over the allowed strain', () => {
  expect(reliefRadius(rounded(10), standing)).toBeCloseTo(6 / 0.2, 9);
  expect(reliefRadius(rounded(10), { ...standing, allowedStrain: 0.1 })).toBeCloseTo(60, 9);
  const outline = rectangle.draw({ long: 120, wide: 60, 'corner radius': 10 });
  const bendRule = neutralAxis({ thickness: 0.25, insideRadius: 0.4, factor: 0.44 });
  const strip = makeStrip({ ...bench, outline, bendRule });
  // Closed, which is usual, only the metal reaches off: 0.25 mm, or that of usual tinplate.
  expect(reliefRadius(strip)).toBeCloseTo(0.25 / 0.2, 9);
  expect(reliefRadius(rounded(10))).toBeCloseTo(0.3 / 0.2, 9);
});

test('or the radius that is asked for', () => {
  const strip = rounded(10);
  expect(reliefSnips(strip, [])).toEqual([]);
  expect(reliefSnips(strip, [], { snipRadius: 10 })).toEqual([]);
  expect(reliefSnips(strip, [], { snipRadius: 10.1 })).toEqual(reliefSnips(strip, [], standing));
  expect(reliefSnips(strip, [], { ...standing, snipRadius: 0 })).toEqual([]);
  for (const snipRadius of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => reliefSnips(strip, [], { snipRadius })).toThrow(
      expect.objectContaining({ name: 'StripError', field: 'snipRadius' }),
    );
  }
});

test('only tighter curves are snipped', () => {
  const outline = crescent.draw({ across: 100, thick: 40 });
  const strip = makeStrip({ ...bench, outline });
  expect(Math.min(...strip.curves.map(({ radius }) => radius))).toBeGreaterThan(30);
  expect(reliefSnips(strip, [], standing)).toEqual([]);
  expect(reliefSnips(rounded(29.9), [], standing).length).toBeGreaterThan(0);
});

// By hand: r = 10, strain 0.2, so at most 4 mm apart; the quarter circle is 15.71 mm long, so it
// takes 4 pieces of 3.93 mm and 5 snips.
test('a rounded corner of 10 mm takes five slits where the hem opens', () => {
  const snips = reliefSnips(rounded(10), [], standing).filter(({ curve }) => curve === 1);
  expect(snips).toHaveLength(5);
  snips.forEach(({ at, halfAngle, depth }, index) => {
    const [first] = rounded(10).curves;
    expect(at).toBeCloseTo((first?.from ?? 0) + (index * 5 * Math.PI) / 4, 9);
    expect([halfAngle, depth]).toEqual([0, 6]);
  });
});

test('and five V-snips where it closes, which take out what each piece turns through', () => {
  const snips = reliefSnips(rounded(10, 'inside'), [], standing).filter(({ curve }) => curve === 1);
  expect(snips).toHaveLength(5);
  for (const { halfAngle } of snips) {
    // 90 degrees in 4 pieces, half to each side.
    expect(halfAngle).toBeCloseTo(90 / 4 / 2, 9);
  }
});

test('between snips the strain is as allowed, and with fewer it would not be', () => {
  const radius = fc.double({ min: 3, max: 29, noNaN: true });
  const strain = fc.double({ min: 0.05, max: 0.4, noNaN: true });
  fc.assert(
    fc.property(radius, strain, (tight, allowedStrain) => {
      const strip = rounded(tight);
      fc.pre(tight < reliefRadius(strip, { ...standing, allowedStrain }));
      // Such a spacing can be cut, and the quarter circle is long enough to need it.
      fc.pre(2 * tight * allowedStrain > 1.2 * LEAST_SPACING && (tight * Math.PI) / 2 > 12);
      const at = reliefSnips(strip, [], { ...standing, allowedStrain })
        .filter(({ curve }) => curve === 2)
        .map((snip) => snip.at);
      const spacing = (at[1] ?? Number.NaN) - (at[0] ?? Number.NaN);
      // The strained part is a triangle with sides of 45 degrees on the spacing.
      const height = spacing / 2;
      expect(height / tight).toBeLessThanOrEqual(allowedStrain + 1e-9);
      const pieces = at.length - 1;
      const fewer = (spacing * pieces) / (pieces - 1) / 2;
      expect(fewer / tight).toBeGreaterThan(allowedStrain - 1e-9);
    }),
  );
});

test('a short curve that hardly turns needs none, many of them in a row do', () => {
  // 2 mm of a circle of 10 mm turn through 0.2 radians, less than twice the strain.
  const strip = rounded(10);
  const piece = (from: number) =>
    ({ from, to: from + 2, radius: 10, direction: 'in', angle: 36 / Math.PI }) as const;
  const alone = { ...strip, curves: [piece(20), piece(30), piece(40)] };
  expect(reliefSnips(alone, [], standing)).toEqual([]);
  // Six of them turn through 1.2 radians, three times twice the strain.
  const row = { ...strip, curves: [20, 22, 24, 26, 28, 30].map(piece) };
  expect(reliefSnips(row, [], standing).map(({ at }) => at)).toEqual(
    [20, 24, 28, 32].map((at) => expect.closeTo(at, 6)),
  );
});

test('on an ellipse only the tight ends are snipped, closer where it is tighter', () => {
  const outline = ellipse.draw({ across: 120, high: 50 });
  const strip = makeStrip({ ...bench, tab: 0, outline });
  const at = reliefSnips(strip, [], standing).map((snip) => snip.at);
  // The radius is b^2 / a = 10.4 at the ends and a^2 / b = 144 at top and bottom.
  const [tip, top] = [strip.developed / 2, strip.developed / 4];
  expect(at.some((place) => Math.abs(place - tip) < 4)).toBe(true);
  expect(at.every((place) => Math.abs(place - top) > 10)).toBe(true);
  const near = at.filter((place) => Math.abs(place - tip) < 25);
  const steps = near.slice(1).map((place, index) => place - (near[index] ?? place));
  expect(Math.min(...steps)).toBeLessThan(2 * 10.5 * 0.2);
  expect(Math.max(...steps)).toBeGreaterThan(1.2 * Math.min(...steps));
});

test('a corner that is formed, not bent, has one snip in its middle', () => {
  const corner = { from: 20, to: 20.6, radius: 0.4, direction: 'out', angle: 80 } as const;
  const [snip, ...more] = reliefSnips({ ...rounded(10), curves: [corner] }, [], standing);
  expect(snip?.at).toBeCloseTo(20.3, 9);
  expect(snip?.halfAngle).toBeCloseTo(40, 9);
  expect(more).toEqual([]);
});

test('snips keep out of notches, ends and each other', () => {
  fc.assert(
    fc.property(anyOutline, fc.constantFrom('outside', 'inside'), (outline, hemFace) => {
      const strip = orSkip(() => makeStrip({ ...bench, tab: 2, outline, hemFace }));
      const notches = notchesOf(strip);
      let last = 0;
      for (const { at, depth } of reliefSnips(strip, notches, standing)) {
        expect(at - last).toBeGreaterThan(last === 0 ? 0 : LEAST_SPACING - 1e-5);
        expect(at).toBeLessThan(strip.developed);
        expect(depth).toBe(6);
        expect(notches.every(({ from, to }) => at < from || at > to)).toBe(true);
        last = at;
      }
    }),
  );
});

test('a curve that the hem has no room in is told', () => {
  const tight = rounded(5, 'inside');
  expect(curveNotices(tight, standing).map((notice) => notice.code)).toEqual(
    Array(4).fill('curve too tight'),
  );
  expect(curveNotices(tight, standing)[0]?.message).toContain('radius of 5 mm');
  expect(curveNotices(rounded(5), standing)).toEqual([]);
  expect(curveNotices(rounded(7, 'inside'), standing)).toEqual([]);
});

test('a closed hem lies in any curve that is wider than its metal is thick', () => {
  const bendRule = neutralAxis({ thickness: 0.3, insideRadius: 0.4, factor: 0.44 });
  const told = [0.25, 0.35].map((radius) => {
    const outline = rectangle.draw({ long: 120, wide: 60, 'corner radius': radius });
    const strip = makeStrip({ ...bench, outline, bendRule, hemFace: 'inside' });
    return curveNotices(strip).length;
  });
  expect(told).toEqual([4, 0]);
});

test('a raw edge is not snipped', () => {
  const outline = rectangle.draw({ long: 120, wide: 60, 'corner radius': 5 });
  const strip = makeStrip({ ...bench, hem: 0, outline });
  expect(reliefSnips(strip, [], standing)).toEqual([]);
  expect(curveNotices(strip)).toEqual([]);
});

test.each([0, -0.1, Number.NaN])('refuses an allowed strain of %f', (allowedStrain) => {
  expect(() => reliefSnips(rounded(10), [], { allowedStrain })).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'allowedStrain' }),
  );
});
