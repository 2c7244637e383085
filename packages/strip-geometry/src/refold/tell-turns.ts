import type { Point } from '../outline.js';
import { distance } from '../point.js';
import { centre, centringWishes } from './centring.js';
import { fold } from './fold.js';
import { chordOf, type LaidFold, laidFold, type Task } from './laid-fold.js';
import { PLACEMENT } from './motion.js';
import { placeBest } from './place-best.js';
import { placeClosest } from './place-closest.js';
import { centringTurns, GAP_COUNTS, nearestWishes } from './turn-wishes.js';
import { changeFor, type Wish, wholeFor } from './wish.js';

/** Deviations, and gaps times `GAP_COUNTS`, up to this part of a smallest mark are small enough to stop. */
const ENOUGH = 0.7;

/** Rounds of linearising before turns are rounded; each takes the error to about its square. */
const ROUNDS = 3;

/** How much of the room of the bound is left each round in which the largest deviation is made least. */
const SHRINK = 0.7;

/** More turns than this are told as drawn, rounded: the sums grow with their cube. */
export const MOST_TURNS = 120;

/**
 * The turns, radians in whole steps, by which the strip with these marks comes
 * near to its target and its ends meet. First those changed as little as
 * will do: weighted least squares over the distances of all points, the gap,
 * the total turning and the changes, linearised anew a few times (Gauss-Newton). Where
 * that leaves a point too far off, those that make the largest distance least
 * (see `centre`). Either way turns are rounded one at a time while the others take
 * up what rounding leaves, and the best turns found are told.
 */
export function tellTurns(task: Task, smallestMark: number): number[] {
  const drawn = task.chain.turns.map((turn) => turn.drawn);
  let best = roundRunning(drawn, task.step);
  if (drawn.length > MOST_TURNS) {
    return best;
  }
  let least = Number.POSITIVE_INFINITY;
  const enough = ENOUGH * smallestMark;
  /** Rounds the turns of that fold, keeps them if they are the best, and says whether they will do. */
  const tried = (laid: LaidFold, wishes: readonly Wish[]): boolean => {
    const told = wholeTurns(laid, wishes, task.step);
    const worst = worstOf(told, task);
    if (worst < least) {
      [best, least] = [told, worst];
    }
    return least <= enough;
  };

  const nearest = nearestFold(task, drawn, smallestMark);
  if (tried(nearest, nearestWishes(nearest, task, smallestMark))) {
    return best;
  }
  const problem = centringTurns(task);
  for (const { state, bound } of centre(problem, nearest, {
    least: smallestMark,
    shrink: SHRINK,
  })) {
    if (tried(state, centringWishes(problem, state, bound))) {
      break;
    }
  }
  return best;
}

/** The fold by least squares, not rounded. */
function nearestFold(task: Task, drawn: readonly number[], smallestMark: number): LaidFold {
  const { points, weights } = task.target;
  const lay = (turns: readonly number[]) =>
    laidFold(task, turns, (folded) => placeBest(folded, points, weights));
  let laid = lay(drawn);
  for (let round = 0; round < ROUNDS; round++) {
    const wishes = nearestWishes(laid, task, smallestMark);
    const change = changeFor(wishes, PLACEMENT + drawn.length);
    laid = lay(laid.turns.map((turn, n) => turn + (change[PLACEMENT + n] ?? 0) * task.step));
  }
  return laid;
}

function wholeTurns({ turns }: LaidFold, wishes: readonly Wish[], step: number): number[] {
  const now = new Float64Array(PLACEMENT + turns.length);
  now.set(
    turns.map((turn) => turn / step),
    PLACEMENT,
  );
  const whole = wholeFor(wishes, now, PLACEMENT);
  return [...whole.subarray(PLACEMENT)].map((steps) => steps * step);
}

/** The largest deviation or what the gap counts, whichever is greater. */
function worstOf(turns: readonly number[], { chain, marks, target }: Task): number {
  const folded = fold(chain, marks, turns).points;
  const { points, largest } = placeClosest(folded, target.points, target.weights);
  return Math.max(largest, GAP_COUNTS * gapOf(points, target.points));
}

/**
 * How far the two ends are from where they should be to each other, once the
 * path is laid on its target. For a closed outline, the distance between them.
 */
export function gapOf(points: readonly Point[], targets: readonly Point[]): number {
  return distance(chordOf(points), chordOf(targets));
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
