import { placesOf } from '../marks/places.js';
import { roundMarks } from '../marks/round-marks.js';
import type { Point } from '../outline.js';
import { minus, point } from '../point.js';
import type { Strip } from '../strip.js';
import { chainOf, fold } from './fold.js';
import { SquaresSum } from './least-squares.js';

// However a polygon is folded from its rounded marks, with sharp bends, some corner is at least so
// far from its place. Say that no corner is farther off than D; v are the corners' displacements, t
// the headings of the flats as drawn, L their lengths, d what rounding adds to each. The flat from v
// to v' then is L + d long, and
//
//   d = t . (v' - v) + e,   0 <= e <= (2 D)^2 / (2 (L - 2 D)),
//
// since it may also lean. With any factor y for each flat, summed over all of them and sorted by corners,
//
//   sum of y d  <=  D . sum of |y t - y' t'| over the corners  +  sum of the positive y e,
//
// where y, t and y', t' are those of the flats before and after the corner. Where the ends meet, the last
// flat comes before the first, and a third of |y t| of the last is added for ends up to D / 3 apart. The least
// D that satisfies this cannot be gone below. Where flats go to and fro, t' is nearly -t, and factors that
// take turns in sign make the right side small: then D must be great.

/**
 * The least that the largest deviation can be, millimetres, if the ends come as near as a
 * third of it to each other; from the factors that show most of those tried.
 */
export function leastStray({ runs, bendRule, sizeIs }: Strip, smallestMark: number): number {
  const places = placesOf(runs);
  const exact = places.places.map(({ at }) => at);
  const marks = roundMarks(exact, smallestMark);
  const chain = chainOf(places, bendRule, sizeIs);
  const drawn = fold(
    chain,
    exact,
    chain.turns.map((turn) => turn.drawn),
  );
  // A sharp bend has three points in one place.
  const corners = drawn.points.filter(
    (p, index, all) =>
      Math.hypot(p.x - (all[index - 1]?.x ?? 1e9), p.y - (all[index - 1]?.y ?? 0)) > 1e-9,
  );
  const flats = corners.slice(1).map((p, index) => {
    const step = minus(p, corners[index] ?? p);
    const length = Math.hypot(step.x, step.y);
    const more = (at: number) => (marks[at] ?? 0) - (exact[at] ?? 0);
    return {
      heading: point(step.x / length, step.y / length),
      length,
      added: more(index + 1) - more(index),
    };
  });
  return leastOf(flats);
}

/** How far apart the ends may be, as a part of the largest deviation. */
const GAP = 1 / 3;

interface Flat {
  readonly heading: Point;
  readonly length: number;
  /** What rounding adds to it. */
  readonly added: number;
}

/** Tries factors by weighted least squares, reweighted so that they come to the least sum of lengths. */
function leastOf(flats: readonly Flat[]): number {
  let most = 0;
  let weights = Array.from({ length: flats.length + 1 }, () => 1);
  for (let round = 0; round < 60; round++) {
    const sum = new SquaresSum(flats.length);
    weights.forEach((weight, corner) => {
      for (const axis of ['x', 'y'] as const) {
        const row = new Float64Array(flats.length);
        const [before, after] = sidesAt(corner, flats.length);
        row[before] = (flats[before]?.heading[axis] ?? 0) * (after === undefined ? GAP : 1);
        if (after !== undefined) row[after] = -(flats[after]?.heading[axis] ?? 0);
        sum.add(row, 0, weight);
      }
    });
    sum.add(
      Float64Array.from(flats, ({ added }) => added),
      1,
      1e6,
    );
    const factors = [...sum.least()];
    most = Math.max(most, shownBy(factors, flats));
    weights = weights.map((_, corner) => 1 / Math.max(pullAt(corner, factors, flats), 1e-6));
  }
  return most;
}

/** The flats before and after a corner; after the last corner comes the gap, with the last flat alone. */
function sidesAt(corner: number, count: number): readonly [before: number, after?: number] {
  return corner === count ? [count - 1] : [(corner + count - 1) % count, corner];
}

/** |y t - y' t'| at a corner, or what the gap adds. */
function pullAt(corner: number, factors: readonly number[], flats: readonly Flat[]): number {
  const [before, after] = sidesAt(corner, flats.length);
  const [y, t] = [factors[before] ?? 0, flats[before]?.heading];
  const [next, u] =
    after === undefined ? [0, undefined] : [factors[after] ?? 0, flats[after]?.heading];
  const pull = Math.hypot(
    y * (t?.x ?? 0) - next * (u?.x ?? 0),
    y * (t?.y ?? 0) - next * (u?.y ?? 0),
  );
  return after === undefined ? GAP * pull : pull;
}

/** The least D that satisfies the inequality with these factors. */
function shownBy(factors: readonly number[], flats: readonly Flat[]): number {
  const left = flats.reduce((sum, { added }, index) => sum + (factors[index] ?? 0) * added, 0);
  const pulls = [...factors, 0].reduce((sum, _, corner) => sum + pullAt(corner, factors, flats), 0);
  const holds = (d: number) =>
    left <=
    flats.reduce(
      (sum, { length }, index) =>
        sum + Math.max(0, factors[index] ?? 0) * ((2 * d) ** 2 / (2 * (length - 2 * d))),
      d * pulls,
    );
  let [low, high] = [0, Math.min(...flats.map(({ length }) => length)) / 2 - 1e-9];
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return low;
}
