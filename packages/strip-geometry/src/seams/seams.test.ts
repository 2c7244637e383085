import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyOutline, orSkip } from '../any-outline.test.support.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { doubleHem } from '../edges/double-hem.js';
import { singleHem } from '../edges/single-hem.js';
import { wiredEdge } from '../edges/wired-edge.js';
import { circle } from '../outlines/circle.js';
import { rectangle } from '../outlines/rectangle.js';
import { makeStrip } from '../strip.js';
import { StripError } from '../strip-error.js';
import { groovedSeam } from './grooved-seam.js';
import { plainLap } from './plain-lap.js';
import type { EndCut, Seam } from './seam.js';
import { seamNamed, seams } from './seams.js';
import { tuckedTab } from './tucked-tab.js';

const INCH = 25.4;
const bendRule = neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 });
const bench = { depth: 25, hem: 6, tab: 12, bendRule };

describe('the grooved seam', () => {
  // Texts on tinsmithing: the total allowance is three times the seam width; 1 W on one edge and
  // 2 W on the other is from memory.
  test('takes three widths, one before and two after', () => {
    const { atStart, atEnd } = groovedSeam(5);
    expect([atStart, atEnd]).toEqual([5, 10]);
  });

  // A lock seam of 1/4 in on a cylinder: the blank is pi D + 3/4 in ("and a smidgen", which the
  // source does not measure), home page of a tinsmith.
  test('a 1/4 in seam on a cylinder: pi D + 3/4 in', () => {
    const seam = groovedSeam(INCH / 4);
    const outline = circle.draw({ across: 3 * INCH });
    const strip = makeStrip({ ...bench, bendRule: zeroThickness(), outline, seam });
    expect(strip.length / INCH).toBeCloseTo(Math.PI * 3 + 3 / 4, 9);
  });

  test('has four layers, and a fold one width from either end', () => {
    const { layers, lines } = groovedSeam(5);
    expect(layers).toBe(4);
    expect(lines).toEqual([
      { purpose: 'fold', end: 'start', from: 5 },
      { purpose: 'fold', end: 'end', from: 5 },
    ]);
  });
});

// E. Thatcher, Making Tin Can Toys, 1919, chapter VI: a lap of 1/4 in for solder; the cutter's
// strip is 1/2 in wide with one joint.
test('a soldered lap of 1/4 in adds 1/4 in', () => {
  const outline = circle.draw({ across: 2.5 * INCH });
  const seam = plainLap(INCH / 4, 'soldered');
  const rule = zeroThickness();
  const strip = makeStrip({ ...bench, outline, depth: INCH / 2, hem: 0, bendRule: rule, seam });
  expect(strip.length / INCH).toBeCloseTo(Math.PI * 2.5 + 1 / 4, 9);
  expect(strip.width).toBeCloseTo(INCH / 2, 12);
  expect(seam.source).toContain('Thatcher');
});

const strip = { length: 200, width: 31, edge: singleHem(6), hemFace: 'outside' } as const;

/** Whether a point of the strip lies in one of the cut polygons (even-odd rule). */
function isCutAway(cuts: readonly EndCut[], x: number, y: number): boolean {
  return cuts.some(({ polygon }) => {
    let inside = false;
    polygon.forEach((a, index) => {
      const b = polygon[(index + 1) % polygon.length] ?? a;
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) {
        inside = !inside;
      }
    });
    return inside;
  });
}

describe('the tucked tab', () => {
  const seam = tuckedTab(12);
  const cuts = seam.cuts(strip);

  test('leaves as much hem open at the start as the tab is long, and a little more', () => {
    expect(seam.openHem).toBeGreaterThan(12);
    expect(seam.openHem).toBeLessThan(13);
  });

  test('has no hem on the tab, and keeps the hem beside it', () => {
    expect(isCutAway(cuts, 190, 5.9)).toBe(true);
    expect(isCutAway(cuts, 190, 6.4)).toBe(true);
    expect(isCutAway(cuts, 190, 6.6)).toBe(false);
    expect(isCutAway(cuts, 187.9, 0.1)).toBe(false);
    expect(isCutAway(cuts, 188.1, 0.1)).toBe(true);
  });

  test('clips both corners of the tab by 3 mm at 45 degrees', () => {
    expect(isCutAway(cuts, 199.9, 9.3)).toBe(true);
    expect(isCutAway(cuts, 199.9, 9.5)).toBe(false);
    expect(isCutAway(cuts, 199.9, 28.2)).toBe(true);
    expect(isCutAway(cuts, 199.9, 28)).toBe(false);
    expect(isCutAway(cuts, 196.9, 30.9)).toBe(false);
    expect(isCutAway(cuts, 198.6, 30.5)).toBe(true);
  });

  // Half-V notch: one cut of 45 degrees at the end of a hem that meets a seam (from memory of
  // texts on sheet-metal work).
  test('clips the hem of the start at 45 degrees', () => {
    expect(isCutAway(cuts, 2.9, 3)).toBe(true);
    expect(isCutAway(cuts, 3.1, 3)).toBe(false);
  });

  test('on a raw edge only the corners of the tab are clipped', () => {
    const raw = makeStrip({ ...bench, hem: 0, outline: rectangle.draw({ long: 90, wide: 30 }) });
    const onRaw = raw.seam.cuts(raw);
    expect(onRaw.map(({ polygon }) => polygon.length)).toEqual([3, 3]);
    expect(isCutAway(onRaw, raw.length - 2, raw.width / 2)).toBe(false);
  });

  test('does not go into a wired edge', () => {
    const outline = rectangle.draw({ long: 90, wide: 30 });
    const refused = () => makeStrip({ ...bench, outline, edge: wiredEdge(2) });
    expect(refused).toThrow(expect.objectContaining({ name: 'StripError', field: 'seam' }));
    expect(() =>
      makeStrip({ ...bench, outline, edge: wiredEdge(2), seam: groovedSeam(4) }),
    ).not.toThrow();
  });
});

describe('a lap', () => {
  test('has no hem between the two ends', () => {
    const outside = plainLap(8, 'soldered').cuts(strip);
    expect(isCutAway(outside, 4, 3)).toBe(true);
    expect(isCutAway(outside, 8.1, 3)).toBe(false);
    expect(isCutAway(outside, 196, 3)).toBe(false);
    const inside = plainLap(8, 'soldered').cuts({ ...strip, hemFace: 'inside' });
    expect(isCutAway(inside, 4, 3)).toBe(false);
    expect(isCutAway(inside, 196, 3)).toBe(true);
    expect(isCutAway(inside, 191.9, 3)).toBe(false);
  });

  test('is riveted along its middle, which is the same line on both ends', () => {
    const { lines, atEnd } = plainLap(8, 'riveted');
    expect(lines.map(({ from }) => from)).toEqual([4, 4]);
    // Laid over the start, the end's line lies as far from where the outline starts.
    expect(atEnd - (lines[1]?.from ?? Number.NaN)).toBe(lines[0]?.from);
    expect(plainLap(8, 'soldered').lines).toEqual([]);
  });
});

test('the lock of a grooved seam has no hem, with a slant of 45 degrees beside it', () => {
  const cuts = groovedSeam(4).cuts(strip);
  for (const mirror of [(x: number) => x, (x: number) => strip.length - x]) {
    expect(isCutAway(cuts, mirror(7.9), 5.9)).toBe(true);
    expect(isCutAway(cuts, mirror(10.9), 3)).toBe(true);
    expect(isCutAway(cuts, mirror(11.1), 3)).toBe(false);
    expect(isCutAway(cuts, mirror(4), 6.1)).toBe(false);
  }
});

const anyLength = fc.double({ min: 2, max: 10, noNaN: true });
const anySeam: fc.Arbitrary<Seam> = fc
  .tuple(fc.constantFrom(...seams), anyLength)
  .map(([kind, length]) =>
    kind.make(Object.fromEntries(kind.sizes.map(({ name }) => [name, length]))),
  );

describe('for every seam', () => {
  test('the length adds up, and marks shift by what the seam adds before', () => {
    fc.assert(
      fc.property(anyOutline, anySeam, (outline, seam) => {
        const made = orSkip(() => {
          try {
            return makeStrip({ ...bench, outline, seam });
          } catch (error) {
            // An outline without room for this seam.
            fc.pre(!(error instanceof StripError && error.field === 'tab'));
            throw error;
          }
        });
        expect(made.length).toBeCloseTo(seam.atStart + made.developed + seam.atEnd, 9);
        const shift = seam.atStart;
        for (const { from, at, to } of made.bends) {
          expect(from).toBeGreaterThanOrEqual(shift);
          expect(at - from).toBeCloseTo(to - at, 9);
          expect(to).toBeLessThanOrEqual(shift + made.developed + 1e-9);
        }
        for (const { from, to } of made.curves) {
          expect(from).toBeGreaterThanOrEqual(shift);
          expect(to).toBeLessThanOrEqual(shift + made.developed + 1e-9);
        }
      }),
    );
  });

  test('once round is as long whatever the seam', () => {
    const outline = rectangle.draw({ long: 90, wide: 40 });
    const developed = seams.map(({ make, example }) => {
      return makeStrip({ ...bench, outline, seam: make(example) }).developed;
    });
    for (const length of developed) {
      expect(length).toBeCloseTo(developed[0] ?? Number.NaN, 9);
    }
  });

  test('what is cut away lies on the strip and never passes the wall by more than the clearance', () => {
    fc.assert(
      fc.property(anySeam, anyLength, fc.boolean(), (seam, hem, twice) => {
        const edge = twice ? doubleHem(hem) : singleHem(hem);
        const blank = { ...strip, edge, width: 25 + edge.allowance };
        for (const { edge: side, polygon } of seam.cuts(blank)) {
          const [first, last] = [polygon[0], polygon.at(-1)];
          const onEdge = side === 'hemmed' ? 0 : blank.width;
          for (const { x, y } of polygon) {
            expect(x).toBeGreaterThanOrEqual(0);
            expect(x).toBeLessThanOrEqual(blank.length);
            expect(Math.abs(y - onEdge)).toBeLessThanOrEqual(edge.notchDepth + 3.5);
          }
          expect(polygon.map(({ x }) => x)).toEqual(
            polygon.map(({ x }) => x).sort((a, b) => a - b),
          );
          // Both ends lie on the edge, or at the end of the strip.
          expect(first?.y === onEdge || first?.x === 0).toBe(true);
          expect(last?.y === onEdge || last?.x === blank.length).toBe(true);
        }
      }),
    );
  });

  test.each(seams)('$name is found by its name and made from its example', (kind) => {
    expect(seamNamed(kind.name)).toBe(kind);
    expect(kind.make(kind.example).name).toBe(kind.name);
    expect(kind.make(kind.example).source).not.toBe('');
  });

  test.each(seams.filter(({ sizes }) => sizes.length > 0))(
    '$name refuses a length that is missing or not above 0',
    ({ make, sizes: [size] }) => {
      const field = size?.name ?? expect.fail();
      for (const wrong of [undefined, 0, -1, Number.NaN]) {
        expect(() => make({ [field]: wrong })).toThrow(
          expect.objectContaining({ name: 'StripError', field }),
        );
      }
    },
  );
});

test('there is no seam of another name', () => {
  expect(seamNamed('weld')).toBeUndefined();
});
