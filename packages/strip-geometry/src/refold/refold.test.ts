import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toRadians } from '../angle.js';
import { anyNeutralAxis, anyOutline, between, orSkip } from '../any-outline.test.support.js';
import type { BendRule } from '../bend-rules/bend-rule.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { placesOf } from '../marks/places.js';
import { bounds } from '../measure.js';
import type { Outline, Point } from '../outline.js';
import { circle } from '../outlines/circle.js';
import { families } from '../outlines/families.js';
import { polygon } from '../outlines/polygon.js';
import { regularPolygon } from '../outlines/regular-polygon.js';
import { star } from '../outlines/star.js';
import { distance, minus, point, turnedAbout } from '../point.js';
import { startAtSeam } from '../seam.js';
import { headingAtStart } from '../segment.js';
import { splitStrip } from '../splitting/split-strip.js';
import { makeStrip, type SizeFace, type Strip } from '../strip.js';
import { scaled } from '../transform.js';
import { anyProportionsOf } from './any-proportions.test.support.js';
import { chainOf, fold } from './fold.js';
import { leastStray } from './least-stray.test.support.js';
import { refold } from './refold.js';

const INCH = 25.4;
const plain = { depth: 25, hem: 0, tab: 0 };
const metal = neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 });

/** The strip folded from its true marks, at the angles drawn. */
function folded({ runs, bendRule, sizeIs }: Strip) {
  const places = placesOf(runs);
  const chain = chainOf(places, bendRule, sizeIs);
  return fold(
    chain,
    places.places.map(({ at }) => at),
    chain.turns.map(({ drawn }) => drawn),
  );
}

function gapBetweenEnds(points: readonly Point[]): number {
  const [first, last] = [points[0], points.at(-1)];
  return first && last ? distance(first, last) : Number.NaN;
}

const anyFace = fc.constantFrom<SizeFace>('inside', 'outside', 'middle');

test('from marks that are not rounded, the ends meet', () => {
  fc.assert(
    fc.property(anyOutline, anyNeutralAxis, anyFace, (outline, bendRule, sizeIs) => {
      const strip = orSkip(() => makeStrip({ ...plain, outline, bendRule, sizeIs }));
      const { turned, points } = folded(strip);
      expect(gapBetweenEnds(points)).toBeLessThan(1e-6);
      expect(turned).toBeCloseTo(2 * Math.PI, 8);
    }),
  );
});

test('so they do where small corners are formed rather than bent', () => {
  // A ring of 60 short flats between four square corners: breaks of 5 degrees or so, all smooth.
  const corners = Array.from({ length: 64 }, (_, index): Point => {
    const angle = (2 * Math.PI * index) / 64;
    const reach = index % 16 === 0 ? 44 : 40;
    return point(reach * Math.cos(angle), reach * Math.sin(angle));
  });
  const outline = polygon.draw({ corners });
  const strip = makeStrip({ ...plain, outline, bendRule: metal, cornerAngle: 10 });
  expect(strip.curves.length).toBeGreaterThan(40);
  expect(strip.bends.length).toBeGreaterThan(3);
  expect(gapBetweenEnds(folded(strip).points)).toBeLessThan(1e-6);
});

test('bent sharply from marks that are not rounded, every joint of the outline is met', () => {
  fc.assert(
    fc.property(anyOutline, (outline) => {
      const strip = makeStrip({ ...plain, outline, bendRule: zeroThickness() });
      const { segments } = startAtSeam(outline, 0);
      const [first] = segments;
      if (first === undefined) {
        throw new Error('an outline without segments');
      }
      const heading = headingAtStart(first);
      const angle = -Math.atan2(heading.y, heading.x);
      const { points } = folded(strip);
      for (const { from } of segments) {
        const joint = turnedAbout(minus(from, first.from), point(0, 0), angle);
        expect(Math.min(...points.map((p) => distance(p, joint)))).toBeLessThan(1e-6);
      }
    }),
  );
});

// The gap of a polygon bent at its drawn angles, without folding: flats with headings u that are
// too long by the differences of the rounding errors leave the sum of those vectors.
test('the gap at the drawn angles is the sum of what rounding adds to each flat', () => {
  const outline = star.draw({ points: 5, across: 83, 'inner ratio': 0.5 });
  const { runs, ...strip } = makeStrip({ ...plain, outline, bendRule: zeroThickness() });
  const mark = INCH / 32;
  let [sum, heading, before] = [point(0, 0), 0, 0];
  for (const run of runs) {
    if (run.kind === 'bend') {
      heading += toRadians(run.angle) * (run.direction === 'in' ? 1 : -1);
    } else {
      const error = Math.round(run.to / mark) * mark - run.to;
      const more = error - before;
      sum = point(sum.x + more * Math.cos(heading), sum.y + more * Math.sin(heading));
      before = error;
    }
  }
  const { atDrawnAngles } = refold({ runs, ...strip }, mark);
  expect(atDrawnAngles.closureGap).toBeCloseTo(Math.hypot(sum.x, sum.y), 9);
  expect(atDrawnAngles.closureGap).toBeGreaterThan(0.1);
});

function sized(outline: Outline, largest: number): Outline {
  const { across, high } = bounds(outline);
  return scaled(outline, largest / Math.max(across, high));
}

// Sizes sold: the larger of across and high from 30 to 200 mm (common practice).
const SIZES = Array.from({ length: 18 }, (_, index) => 30 + 10 * index);
const RULES = [
  ['bends taken as sharp', zeroThickness()],
  ['by the neutral axis', metal],
] as const;
const MARKS = [
  ['half a millimetre', 0.5],
  ['a thirty-second of an inch', INCH / 32],
] as const;

describe.each(RULES)('%s', (_, bendRule) => {
  describe.each(MARKS)('marked to %s', (_mark, mark) => {
    test.each(families)('$name: closes within a mark, no point off by one', (family) => {
      const example = family.draw(family.example);
      let made = 0;
      for (const size of SIZES) {
        const outline = sized(example, size);
        let strip: Strip;
        try {
          strip = makeStrip({ ...plain, outline, bendRule });
        } catch {
          // Too small for the metal; how many are made is counted below.
          continue;
        }
        const found = refold(strip, mark);
        expect(found.closureGap, `${size} mm`).toBeLessThan(mark);
        expect(found.largestDeviation, `${size} mm`).toBeLessThan(mark);
        made++;
      }
      expect(made).toBeGreaterThanOrEqual(SIZES.length - 1);
    });
  });
});

// Half and whole millimetres, thirty-seconds and sixteenths of an inch.
const anyRuleMark = fc.constantFrom(0.5, 1, INCH / 32, INCH / 16);
const anyBendRule = fc.constantFrom<BendRule>(zeroThickness(), metal);
const anySizeSold = between(30, 200);

/** The shortest flat or curve between bends, in marks. */
function shortest({ runs }: Strip, mark: number): number {
  const sides = runs.filter(({ kind }) => kind !== 'bend').map(({ from, to }) => to - from);
  return Math.min(...sides) / mark;
}

describe.each(families)('$name in any of its proportions and any size', (family) => {
  test('closes within a mark, no point off by one, where sides are two marks or more', () => {
    fc.assert(
      fc.property(
        anyProportionsOf(family),
        anySizeSold,
        anyRuleMark,
        anyBendRule,
        (draw, size, mark, bendRule) => {
          const outline = sized(draw(), size);
          const strip = orSkip(() => makeStrip({ ...plain, outline, bendRule }));
          fc.pre(shortest(strip, mark) >= 2);
          const { closureGap, largestDeviation } = refold(strip, mark);
          expect(closureGap).toBeLessThan(mark);
          expect(largestDeviation).toBeLessThan(mark);
        },
      ),
      { numRuns: 25, maxSkipsPerRun: 20 },
    );
  });
});

// Tips sharper than that, on stars of many points, cannot always come within a mark, whatever the
// angles. `leastStray` shows for each how far off some corner must be.
const anySharpStar = fc
  .record({
    points: fc.integer({ min: 3, max: 16 }),
    across: between(60, 200),
    tip: between(4, 22),
  })
  .map(({ points, across, tip }) =>
    makeStrip({
      ...plain,
      outline: star.draw({ points, across, 'tip angle': tip }),
      bendRule: zeroThickness(),
    }),
  );

test('sharp stars come within a mark, or within a quarter of the nearest that can be', () => {
  fc.assert(
    fc.property(anySharpStar, (strip) => {
      const { closureGap, largestDeviation } = refold(strip, 0.5);
      expect(closureGap).toBeLessThan(0.5);
      expect(largestDeviation).toBeLessThan(Math.max(0.4, 1.25 * leastStray(strip, 0.5)));
    }),
    { numRuns: 60 },
  );
});

test('nothing is nearer than what is shown to be the nearest', () => {
  fc.assert(
    fc.property(anySharpStar, (strip) => {
      const { atDrawnAngles, ...told } = refold(strip, 0.5);
      const least = leastStray(strip, 0.5);
      for (const { largestDeviation, closureGap } of [told, atDrawnAngles]) {
        const counted = Math.max(largestDeviation, 3 * closureGap);
        expect(counted).toBeGreaterThanOrEqual(least * (1 - 1e-6));
      }
    }),
    { numRuns: 40 },
  );
});

// Sixteen tips of 4 degrees: of sixty sizes, some can be folded to no less than a mark off.
test('there are stars that no angles bring within a mark', () => {
  const least = Array.from({ length: 60 }, (_, index) => {
    const sizes = { points: 16, across: 100 + index / 3, 'tip angle': 4 };
    const strip = makeStrip({ ...plain, outline: star.draw(sizes), bendRule: zeroThickness() });
    return leastStray(strip, 0.5);
  });
  expect(Math.max(...least)).toBeGreaterThan(0.5);
});

test('told angles are whole steps, and sum to one turn round a polygon', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 3, max: 16 }),
      fc.integer({ min: 30, max: 200 }),
      (sides, across) => {
        const outline = regularPolygon.draw({ sides, 'across corners': across });
        const strip = makeStrip({ ...plain, outline, bendRule: zeroThickness() });
        const { folds, curves } = refold(strip, 0.5, { angleStep: 0.5 });
        expect(curves).toEqual([]);
        expect(folds.map(({ number }) => number)).toEqual(strip.bends.map(({ number }) => number));
        let sum = 0;
        for (const { told, drawn } of folds) {
          expect(Math.abs(2 * told.angle - Math.round(2 * told.angle))).toBeLessThan(1e-9);
          expect(drawn.angle).toBeCloseTo(360 / sides, 9);
          sum += told.angle;
        }
        expect(sum).toBeCloseTo(360, 6);
      },
    ),
    { numRuns: 40 },
  );
});

test('marks that are true leave the angles as drawn', () => {
  // Six sides of 40 mm, on a rule of whole millimetres.
  const outline = regularPolygon.draw({ sides: 6, side: 40 });
  const strip = makeStrip({ ...plain, outline, bendRule: zeroThickness() });
  const found = refold(strip, 1);
  expect(found.closureGap).toBeLessThan(1e-9);
  expect(found.largestDeviation).toBeLessThan(1e-9);
  for (const { told } of found.folds) {
    expect(told).toEqual({ direction: 'in', angle: expect.closeTo(60, 9) });
  }
});

test('the path is laid on the drawing, and the place of the worst point is on the strip', () => {
  const outline = star.draw({ points: 5, across: 90 });
  const strip = makeStrip({ ...plain, outline, bendRule: metal, tab: 10, hem: 6 });
  const { path, drawing, largestDeviation, at } = refold(strip, 0.5);
  const off = path.map((p, index) => distance(p, drawing[index] ?? p));
  expect(Math.max(...off)).toBeCloseTo(largestDeviation, 12);
  expect(at).toBeGreaterThanOrEqual(0);
  expect(at).toBeLessThanOrEqual(strip.length);
});

test('a strip of hundreds of bends is told its drawn angles, rounded so that they add up', () => {
  const corners = Array.from({ length: 300 }, (_, index) => {
    const angle = (2 * Math.PI * index) / 300;
    return point(400 * Math.cos(angle), 400 * Math.sin(angle));
  });
  const strip = makeStrip({
    ...plain,
    outline: polygon.draw({ corners }),
    bendRule: zeroThickness(),
  });
  const { folds, closureGap } = refold(strip, 0.5);
  expect(folds).toHaveLength(300);
  for (const { told } of folds) {
    expect(told.angle).toBeCloseTo(1.2, 6);
  }
  expect(Number.isFinite(closureGap)).toBe(true);
});

test('a part of a divided circle turns as much in one half of its curve as in the other', () => {
  const outline = circle.draw({ across: 300 });
  const strip = makeStrip({ ...plain, tab: 12, outline, bendRule: zeroThickness() });
  const parts = splitStrip(strip, 500);
  expect(parts).toHaveLength(2);
  for (const { strip: part } of parts) {
    const { curves, largestDeviation } = refold(part, 0.5);
    const [curve] = curves;
    expect(curve?.drawn[0]).toBeCloseTo(90, 6);
    expect(curve?.drawn[1]).toBeCloseTo(90, 6);
    expect(largestDeviation).toBeLessThan(0.5);
  }
});

test.each([0, -0.1, Number.NaN])('refuses an angle step of %d', (angleStep) => {
  const strip = makeStrip({
    ...plain,
    outline: star.draw({ points: 5, across: 90 }),
    bendRule: metal,
  });
  expect(() => refold(strip, 0.5, { angleStep })).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'angleStep' }),
  );
});

test('refuses a mark that is no length', () => {
  const strip = makeStrip({
    ...plain,
    outline: star.draw({ points: 5, across: 90 }),
    bendRule: metal,
  });
  expect(() => refold(strip, 0)).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'mark' }),
  );
});
