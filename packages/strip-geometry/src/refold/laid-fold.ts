import type { Point } from '../outline.js';
import { minus } from '../point.js';
import type { Effect } from './centring.js';
import { type Chain, fold, type Pivot } from './fold.js';
import { type Motion, moved, PLACEMENT } from './motion.js';
import { effectOfPlacing } from './place-closest.js';
import type { Wish } from './wish.js';

/** What the turns should make of the folded strip. */
export interface Target {
  /** Where the points of the fold should lie. */
  readonly points: readonly Point[];
  /** The share of the strip that each point stands for. */
  readonly weights: readonly number[];
  /** Radians turned through from end to end. */
  readonly turned: number;
}

/** A strip to be folded onto its drawing. */
export interface Task {
  readonly chain: Chain;
  /** Distances of the places from the square end. */
  readonly marks: readonly number[];
  readonly target: Target;
  /** The finest step of the turns, radians: the unit of their unknowns. */
  readonly step: number;
}

/** A strip folded at some turns and laid on its drawing. */
export interface LaidFold {
  /** Radians. */
  readonly turns: readonly number[];
  readonly motion: Motion;
  readonly points: readonly Point[];
  readonly pivots: readonly Pivot[];
  /** Radians turned through from end to end. */
  readonly turned: number;
}

/** The strip folded at these turns, laid by `motionOf` its points. */
export function laidFold(
  { chain, marks }: Task,
  turns: readonly number[],
  motionOf: (points: readonly Point[]) => Motion,
): LaidFold {
  const { points, pivots, turned } = fold(chain, marks, turns);
  const motion = motionOf(points);
  return { turns, motion, points: moved(points, motion), pivots, turned };
}

/** How far each point is from its place. */
export function offsetsOf({ points }: LaidFold, { target }: Task): Point[] {
  return points.map((p, index) => minus(p, target.points[index] ?? p));
}

/** How many unknowns a laid fold has: those of its placement, then its turns in steps. */
export function unknownsOf({ chain }: Task): number {
  return PLACEMENT + chain.turns.length;
}

/** How each point moves with the unknowns. */
export function effectsOf(laid: LaidFold, task: Task): Effect[] {
  return laid.points.map((p, index) => effectOn(index, effectOfPlacing(p), laid, task));
}

/** How the point of that index moves with the unknowns, given how it does with the placement. */
function effectOn(
  index: number,
  placing: Effect,
  { points, pivots }: LaidFold,
  task: Task,
): Effect {
  const [x, y] = [new Float64Array(unknownsOf(task)), new Float64Array(unknownsOf(task))];
  x.set(placing.x);
  y.set(placing.y);
  pivots.forEach((pivot, number) => {
    const effect = effectOfTurn(points, pivot, index);
    x[PLACEMENT + number] = effect.x * task.step;
    y[PLACEMENT + number] = effect.y * task.step;
  });
  return { x, y };
}

/**
 * How far the point of that index moves for a radian more of a turn. A bend
 * turns all points after it about itself; half a curve does so bit by bit along its points.
 */
function effectOfTurn(points: readonly Point[], { from, to }: Pivot, index: number): Point {
  if (index <= from) {
    return { x: 0, y: 0 };
  }
  const reached = Math.min(to, index);
  const share = to === from ? 1 : (reached - from) / (to - from);
  // The middle of the stretch that has turned so far; near enough for its mean.
  const centre = points[Math.round((from + reached) / 2)];
  const p = points[index];
  return p === undefined || centre === undefined
    ? { x: 0, y: 0 }
    : { x: -share * (p.y - centre.y), y: share * (p.x - centre.x) };
}

/** How far the last point is from where it should be to the first. */
export function gapIn({ points }: LaidFold, { target }: Task): Point {
  return minus(chordOf(points), chordOf(target.points));
}

/** How the gap changes with the unknowns. */
export function effectOnGap(laid: LaidFold, task: Task): Effect {
  // The chord from end to end is only turned by placing, not moved.
  const { x, y } = chordOf(laid.points);
  const placing = { x: Float64Array.of(0, 0, -y), y: Float64Array.of(0, 0, x) };
  return effectOn(laid.points.length - 1, placing, laid, task);
}

/**
 * That the turns add up. A turning that is off counts as if it moved a point a whole
 * strip's length away, since the angles that a hand is told should add up.
 */
export function turningWish({ turned }: LaidFold, task: Task, weight: number): Wish {
  const { target, marks, step } = task;
  const lever = marks[marks.length - 1] ?? 0;
  const row = new Float64Array(unknownsOf(task)).fill(step, PLACEMENT);
  return { row, off: turned - target.turned, weight: weight * lever ** 2 };
}

/** From the first point to the last. */
export function chordOf(points: readonly Point[]): Point {
  const [first, last] = [points[0], points[points.length - 1]];
  return first === undefined || last === undefined ? { x: 0, y: 0 } : minus(last, first);
}

/** That every turn stays as drawn; `weight` is for a radian. */
export function drawnWishes({ turns }: LaidFold, task: Task, weight: number): Wish[] {
  return task.chain.turns.map(({ drawn }, number) => {
    const row = new Float64Array(unknownsOf(task));
    row[PLACEMENT + number] = task.step;
    return { row, off: (turns[number] ?? drawn) - drawn, weight };
  });
}
