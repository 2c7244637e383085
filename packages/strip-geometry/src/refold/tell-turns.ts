import { toRadians } from '../angle.js';
import type { Point } from '../outline.js';
import { distance, minus } from '../point.js';
import { type Chain, type Folded, fold, type Pivot } from './fold.js';
import { SquaresSum } from './least-squares.js';
import { placeBest } from './place-best.js';

/** What the turns should make of the folded strip. */
export interface Target {
  /** Where the points of the fold should lie. */
  readonly points: readonly Point[];
  /** The share of the strip that each point stands for. */
  readonly weights: readonly number[];
  /** Radians turned through from end to end. */
  readonly turned: number;
}

/** How much more the gap between the ends counts than the mean distance from the drawing. */
const GAP = 20;

/**
 * How much a turn of one degree more or less counts, as a distance of every
 * point from the drawing in smallest marks. The first keeps the angles nearest
 * to those drawn; the later ones are tried where that leaves too much.
 */
const PER_DEGREE = [0.25, 0.12, 0.06, 0.03, 0.015] as const;

/** Deviations and gaps up to this part of a smallest mark are small enough to stop. */
const ENOUGH = 0.7;

/** Rounds of linearising before turns are rounded; each takes the error to about its square. */
const ROUNDS = 3;

/** Rounds in which the points that are farthest off are given more weight. */
const EVENING_ROUNDS = 7;

/** How many unknowns come before the turns: how far the path is moved along x and y, and turned. */
const PLACEMENT = 3;

/** More turns than this are told as drawn, rounded: the sums grow with their cube. */
export const MOST_TURNS = 120;

/**
 * The turns, radians in whole steps of `step` degrees, by which the strip with
 * these marks comes near to its target and its ends meet, changed as little as
 * will do: weighted least squares over the distances of all points, the gap,
 * the total turning and the changes, linearised anew a few times (Gauss-Newton),
 * then rounded one turn at a time while the others take up what rounding
 * leaves. Where a point stays too far off, the far points are weighted more
 * and the changes less; the best turns found are told.
 */
export function tellTurns(
  chain: Chain,
  marks: readonly number[],
  target: Target,
  { step, smallestMark }: { readonly step: number; readonly smallestMark: number },
): number[] {
  const drawn = chain.turns.map((turn) => turn.drawn);
  if (drawn.length > MOST_TURNS) {
    return roundRunning(drawn, toRadians(step));
  }
  let best = roundRunning(drawn, toRadians(step));
  let least = Number.POSITIVE_INFINITY;
  for (const perDegree of PER_DEGREE) {
    const hold = perDegree * smallestMark;
    let turns = drawn;
    let { weights } = target;
    for (let round = 0; round < ROUNDS + EVENING_ROUNDS; round++) {
      turns = next(chain, marks, { ...target, weights }, turns, hold);
      if (round < ROUNDS - 1) {
        continue;
      }
      const told = next(chain, marks, { ...target, weights }, turns, hold, toRadians(step));
      const worst = worstOf(fold(chain, marks, told), target);
      if (worst < least) {
        [best, least] = [told, worst];
      }
      if (least <= ENOUGH * smallestMark) {
        return best;
      }
      weights = evened(fold(chain, marks, turns), { ...target, weights });
    }
  }
  return best;
}

/** The largest deviation or the gap, whichever is greater. */
function worstOf(folded: Folded, target: Target): number {
  const { points, largest } = placeBest(folded.points, target.points, target.weights);
  return Math.max(largest, gapOf(points, target.points));
}

/**
 * How far the two ends are from where they should be to each other, once the
 * path is laid on its target. For a closed outline, the distance between them.
 */
export function gapOf(points: readonly Point[], targets: readonly Point[]): number {
  return distance(chordOf(points), chordOf(targets));
}

/** From the first point to the last. */
function chordOf(points: readonly Point[]): Point {
  const [first, last] = [points[0], points[points.length - 1]];
  return first === undefined || last === undefined ? { x: 0, y: 0 } : minus(last, first);
}

/** The weights, raised for points that are far off (as in Lawson's method for the least maximum). */
function evened(folded: Folded, target: Target): number[] {
  const { points, largest } = placeBest(folded.points, target.points, target.weights);
  if (largest === 0) {
    return [...target.weights];
  }
  const raised = points.map((p, index) => {
    const off = distance(p, target.points[index] ?? p) / largest;
    // A little for points that stand for next to nothing, such as those in a sharp bend.
    return ((target.weights[index] ?? 0) + 0.0005) * (0.3 + off ** 2);
  });
  const total = raised.reduce((sum, weight) => sum + weight, 0);
  return raised.map((weight) => weight / total);
}

/** What moving along x, along y, and turning by a radian do to a point. */
interface Placing {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** One round; the turns it finds are whole multiples of `step` if one is given. */
function next(
  chain: Chain,
  marks: readonly number[],
  target: Target,
  turns: readonly number[],
  perDegree: number,
  step?: number,
): number[] {
  const folded = fold(chain, marks, turns);
  const { points } = placeBest(folded.points, target.points, target.weights);
  const unit = step ?? 1;
  // Unknowns: the placement (x, y, angle), then the turns themselves, in units of the step.
  const sum = new SquaresSum(PLACEMENT + turns.length);
  /** Asks the placed point of that index to move by `by`; `moves` is how placing would move it. */
  const pull = (index: number, by: Point, weight: number, moves: Placing) => {
    for (const axis of ['x', 'y'] as const) {
      const row = new Float64Array(sum.size);
      row.set(moves[axis]);
      let now = 0;
      turns.forEach((turn, number) => {
        const effect = effectOf(points, folded.pivots[number], index)[axis];
        row[PLACEMENT + number] = effect * unit;
        now += effect * turn;
      });
      sum.add(row, by[axis] + now, weight);
    }
  };

  points.forEach((p, index) => {
    const by = minus(target.points[index] ?? p, p);
    pull(index, by, target.weights[index] ?? 0, { x: [1, 0, -p.y], y: [0, 1, p.x] });
  });
  // The chord from end to end is only turned by placing, not moved.
  const chord = chordOf(points);
  const off = minus(chordOf(target.points), chord);
  pull(points.length - 1, off, GAP, { x: [0, 0, -chord.y], y: [0, 0, chord.x] });
  // A turning that is off counts as if it moved a point a whole strip's length away, since the
  // angles that a hand is told should add up.
  const lever = marks[marks.length - 1] ?? 0;
  sum.add(new Float64Array(sum.size).fill(unit, PLACEMENT), target.turned, lever ** 2);
  const hold = (perDegree / toRadians(1)) ** 2 / turns.length;
  chain.turns.forEach(({ drawn }, number) => {
    const row = new Float64Array(sum.size);
    row[PLACEMENT + number] = unit;
    sum.add(row, drawn, hold);
  });
  const found = sum.least(step === undefined ? undefined : PLACEMENT);
  return turns.map((_, number) => (found[PLACEMENT + number] ?? 0) * unit);
}

/**
 * How far the point of that index moves for a radian more of a turn. A bend
 * turns all points after it about itself; half a curve does so bit by bit along its points.
 */
function effectOf(points: readonly Point[], pivot: Pivot | undefined, index: number): Point {
  if (pivot === undefined || index <= pivot.from) {
    return { x: 0, y: 0 };
  }
  const { from, to } = pivot;
  const reached = Math.min(to, index);
  const share = to === from ? 1 : (reached - from) / (to - from);
  // The middle of the stretch that has turned so far; near enough for its mean.
  const centre = points[Math.round((from + reached) / 2)];
  const p = points[index];
  return p === undefined || centre === undefined
    ? { x: 0, y: 0 }
    : { x: -share * (p.y - centre.y), y: share * (p.x - centre.x) };
}

/** Each turn rounded so that the heading after it is nearest to the true one. */
function roundRunning(turns: readonly number[], step: number): number[] {
  let [heading, told] = [0, 0];
  return turns.map((turn) => {
    heading += turn;
    const next = Math.round((heading - told) / step);
    told += next * step;
    return next * step;
  });
}
