import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyNeutralAxis, anyOutline, orSkip } from '../any-outline.test.support.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { edgeTreatments } from '../edges/edge-treatments.js';
import type { Point } from '../outline.js';
import { circle } from '../outlines/circle.js';
import { heart } from '../outlines/heart.js';
import { rectangle } from '../outlines/rectangle.js';
import { regularPolygon } from '../outlines/regular-polygon.js';
import { sailboat } from '../outlines/sailboat.js';
import { groovedSeam } from '../seams/grooved-seam.js';
import { plainLap } from '../seams/plain-lap.js';
import { seams } from '../seams/seams.js';
import { makeStrip, type Strip } from '../strip.js';
import { StripError } from '../strip-error.js';
import { flatPattern } from './flat-pattern.js';

const bench = { depth: 25, hem: 6, tab: 12, bendRule: zeroThickness() };
const tinplate = neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 });
const hexagon = makeStrip({ ...bench, outline: regularPolygon.draw({ sides: 6, side: 40 }) });

// By hand: sides of 40, V-notches 6 deep and wide to each side at 40, 80 ... 240, the half notch of
// the last at the start, a tab of 12 from 240 on, 0.5 below the hem line, corners clipped by 3.
test('a hexagon, corner by corner', () => {
  const { outline, length, width } = flatPattern(hexagon);
  expect([length, width]).toEqual([expect.closeTo(252, 9), 31]);
  const near = (x: number, y: number) => ({ x: expect.closeTo(x, 5), y: expect.closeTo(y, 5) });
  const notches = [40, 80, 120, 160, 200].flatMap((at) => [
    near(at - 6, 0),
    near(at, 6),
    near(at + 6, 0),
  ]);
  expect(outline).toEqual([
    near(0, 6),
    near(6, 0),
    ...notches,
    near(234, 0),
    near(240, 6),
    near(240, 6.5),
    near(249, 6.5),
    near(252, 9.5),
    near(252, 28),
    near(249, 31),
    near(0, 31),
  ]);
});

test('bend lines run from the hem line to the cutting edge, with number and direction', () => {
  const strip = makeStrip({ ...bench, bendRule: tinplate, outline: heart.draw({ across: 90 }) });
  const { bends } = flatPattern(strip);
  expect(bends.map(({ number, direction }) => [number, direction])).toEqual([
    [1, 'out'],
    [2, 'in'],
  ]);
  bends.forEach(({ at, zone, line, angle }, index) => {
    const mark = strip.bends[index] ?? expect.fail();
    expect(line).toEqual({ from: { x: mark.at, y: 6 }, to: { x: mark.at, y: 31 } });
    expect([at, zone.from, zone.to, angle]).toEqual([mark.at, mark.from, mark.to, mark.angle]);
  });
});

test('the hem is left open as far as the tab goes in', () => {
  expect(flatPattern(hexagon).openHem).toEqual({ from: 0, to: 12.5 });
  const lapped = { ...bench, outline: circle.draw({ across: 60 }), seam: plainLap(8, 'soldered') };
  expect(flatPattern(makeStrip(lapped)).openHem).toBeUndefined();
  expect(flatPattern(makeStrip({ ...lapped, hem: 0 })).openHem).toBeUndefined();
});

test('hem lines are scribed where there is metal to fold', () => {
  const lines = flatPattern(hexagon).scribeLines;
  // From the square end to the tab: the points of the notches only touch it.
  expect(lines).toEqual([
    {
      purpose: 'hem line',
      from: { x: expect.closeTo(0, 5), y: 6 },
      to: { x: expect.closeTo(240, 5), y: 6 },
    },
  ]);
  const { make } = edgeTreatments.find(({ name }) => name === 'double hem') ?? expect.fail();
  const twice = flatPattern({ ...hexagon, width: 37, edge: make({ hem: 6 }) }).scribeLines;
  // The first fold, at half the depth of the notches, is cut by each.
  expect(twice.filter(({ from }) => from.y === 6)).toHaveLength(6);
  expect(twice.filter(({ from }) => from.y === 12)).toHaveLength(1);
});

test('the folds of a grooved seam and the rivets of a lap are scribed across', () => {
  const outline = circle.draw({ across: 60 });
  const grooved = makeStrip({ ...bench, outline, seam: groovedSeam(4) });
  const folds = flatPattern(grooved).scribeLines.filter(({ purpose }) => purpose === 'seam fold');
  expect(folds).toEqual([
    { purpose: 'seam fold', from: { x: 4, y: 6 }, to: { x: 4, y: 31 } },
    {
      purpose: 'seam fold',
      from: { x: grooved.length - 4, y: 6 },
      to: { x: grooved.length - 4, y: 31 },
    },
  ]);
  const riveted = makeStrip({ ...bench, outline, seam: plainLap(10, 'riveted') });
  const rivets = flatPattern(riveted).scribeLines.filter(({ purpose }) => purpose === 'rivets');
  expect(rivets.map(({ from }) => from.x)).toEqual([5, riveted.length - 5]);
});

test('relief snips where the hem opens are slits to the hem line', () => {
  const outline = rectangle.draw({ long: 90, wide: 50, 'corner radius': 10 });
  const { slits, snips } = flatPattern(makeStrip({ ...bench, outline }), { hemStage: 'square' });
  expect(snips.length).toBeGreaterThan(0);
  expect(slits).toHaveLength(snips.length);
  slits.forEach(({ from, to }, index) => {
    expect([from, to]).toEqual([
      { x: snips[index]?.at, y: 0 },
      { x: snips[index]?.at, y: 6 },
    ]);
  });
});

test('a notch of 0 degrees is a slit', () => {
  const { slits, outline } = flatPattern(hexagon, { halfAngle: 0 });
  expect(slits.map(({ from }) => from.x)).toEqual(
    [40, 80, 120, 160, 200].map((x) => expect.closeTo(x, 6)),
  );
  expect(outline.filter(({ y }) => y > 0 && y < 6)).toEqual([]);
});

test('no sliver of hem is left between the last notch and the tab', () => {
  const outline = regularPolygon.draw({ sides: 6, side: 40 });
  const strip = makeStrip({ ...bench, bendRule: tinplate, outline });
  const last = strip.bends.at(-1) ?? expect.fail();
  expect(strip.developed - last.at).toBeGreaterThan(0.2);
  const between = flatPattern(strip).outline.filter(
    ({ x }) => x > last.at && x < strip.length - 0.1,
  );
  expect(between.filter(({ y }) => y < 6)).toEqual([]);
});

test('what is too narrow or overlaps is said', () => {
  const strip = makeStrip({ ...bench, outline: heart.draw({ across: 90 }) });
  // The cleft folds through 96 degrees: a hem that stands square needs 48, a closed one has room.
  const standing = flatPattern(strip, { hemStage: 'square' }).notices;
  expect(standing.map(({ code }) => code)).toEqual(['notch too narrow']);
  expect(flatPattern(strip).notices).toEqual([]);
  const narrow = flatPattern(strip, { halfAngle: 30 }).notices;
  expect(narrow.map(({ code }) => code)).toEqual(['notch too narrow']);
  const boat = makeStrip({ ...bench, outline: sailboat.draw({ across: 90 }) });
  expect(flatPattern(boat).notices.map(({ code }) => code)).toContain('notches overlap');
  expect(flatPattern(hexagon).notices).toEqual([]);
});

const anyLength = fc.double({ min: 1.5, max: 9, noNaN: true });
const anyEdge = fc
  .tuple(fc.constantFrom(...edgeTreatments), anyLength)
  .map(([kind, length]) =>
    kind.make(Object.fromEntries(kind.sizes.map(({ name }) => [name, length]))),
  );
const anySeam = fc
  .tuple(fc.constantFrom(...seams), anyLength)
  .map(([kind, length]) =>
    kind.make(Object.fromEntries(kind.sizes.map(({ name }) => [name, length]))),
  );

/** Any strip that can be made, in any metal, with any edge and seam. */
const anyStrip: fc.Arbitrary<() => Strip> = fc
  .record({
    outline: anyOutline,
    bendRule: fc.oneof(fc.constant(zeroThickness()), anyNeutralAxis),
    edge: anyEdge,
    seam: anySeam,
    hemFace: fc.constantFrom('outside', 'inside'),
  })
  .map((cutter) => () => {
    try {
      return makeStrip({ ...bench, ...cutter });
    } catch (error) {
      fc.pre(!(error instanceof StripError && ['tab', 'seam'].includes(error.field)));
      throw error;
    }
  });

const half = fc.double({ min: 0, max: 80, noNaN: true });

/** Whether a point lies in a polygon (even-odd rule). */
function isIn(polygon: readonly Point[], { x, y }: Point): boolean {
  let inside = false;
  polygon.forEach((a, index) => {
    const b = polygon[(index + 1) % polygon.length] ?? a;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) {
      inside = !inside;
    }
  });
  return inside;
}

/** Whether two sides cross each other away from their ends. */
function cross([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  const side = (p: Point, q: Point, r: Point) =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

describe('for every strip', () => {
  test('the pattern is a simple polygon inside the blank', () => {
    fc.assert(
      fc.property(anyStrip, half, (make, halfAngle) => {
        const { outline, length, width } = flatPattern(orSkip(make), { halfAngle });
        for (const { x, y } of outline) {
          expect(x >= 0 && x <= length && y >= 0 && y <= width).toBe(true);
        }
        const sides = outline.map((from, index) => {
          return [from, outline[(index + 1) % outline.length] ?? from] as const;
        });
        const crossed = sides.some((a, index) => sides.slice(index + 1).some((b) => cross(a, b)));
        expect(crossed).toBe(false);
      }),
    );
  });

  test('blank width is depth and edge, blank length is outline and seam', () => {
    fc.assert(
      fc.property(anyStrip, (make) => {
        const strip = orSkip(make);
        const { length, width } = flatPattern(strip);
        expect(width).toBe(25 + strip.edge.allowance);
        const { atStart, atEnd } = strip.seam;
        expect(length).toBeCloseTo(atStart + strip.developed + atEnd, 9);
      }),
    );
  });

  test('notches and snips leave the wall whole', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyStrip, half, share, share, (make, halfAngle, along, across) => {
        const strip = orSkip(make);
        const { seam, developed, edge, width } = strip;
        const { outline } = flatPattern(strip, { halfAngle });
        // Between the ends of the outline, a hair's breadth below the hem line.
        const x = seam.atStart + 1e-4 + along * (developed - 2e-4);
        const y = edge.notchDepth + 1e-4 + across * (width - edge.notchDepth - 2e-4);
        expect(isIn(outline, { x, y })).toBe(true);
      }),
    );
  });

  test('metal is missing in notches, snips and end cuts, and nowhere else', () => {
    const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(anyStrip, half, share, share, (make, halfAngle, along, across) => {
        const strip = orSkip(make);
        const { length, edge, seam, developed } = strip;
        const { outline, notches, snips } = flatPattern(strip, { halfAngle });
        const p = { x: along * length, y: across * (edge.notchDepth || strip.width) };
        const end = seam.atStart + developed;
        // Notches go on past the seam at the other end.
        const around = [-developed, 0, developed].flatMap((by) =>
          notches.map((notch) => ({ ...notch, at: notch.at + by })),
        );
        const inV = [...around, ...snips].some(({ at, depth, halfAngle: a }) => {
          return Math.abs(p.x - at) < (depth - p.y) * Math.tan((a * Math.PI) / 180);
        });
        const inEnd = seam.cuts(strip).some(({ polygon }) => isIn(polygon, p));
        // The sliver beside a seam at a corner goes as well.
        const last = strip.bends.at(-1);
        const atCorner = last !== undefined && last.to > end - 1e-6;
        const inSliver = atCorner && p.x > last.at && p.x < end + 1e-5;
        fc.pre(!inSliver);
        expect(isIn(outline, p)).toBe(!inV && !inEnd);
      }),
      { numRuns: 300 },
    );
  });

  test('labels and lines lie on the blank, and no number is odd', () => {
    fc.assert(
      fc.property(anyStrip, (make) => {
        const pattern = flatPattern(orSkip(make));
        const lines = [
          ...pattern.scribeLines,
          ...pattern.slits,
          ...pattern.bends.map((b) => b.line),
        ];
        const points = [
          ...lines.flatMap(({ from, to }) => [from, to]),
          ...pattern.labels.map((l) => l.at),
        ];
        for (const { x, y } of points) {
          expect(x >= 0 && x <= pattern.length && y >= 0 && y <= pattern.width).toBe(true);
        }
        expect(pattern.labels.filter(({ about }) => about === 'bend')).toHaveLength(
          pattern.bends.length,
        );
      }),
    );
  });
});
