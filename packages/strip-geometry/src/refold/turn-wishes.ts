import { toRadians } from '../angle.js';
import { point } from '../point.js';
import type { Centring } from './centring.js';
import {
  drawnWishes,
  effectOnGap,
  effectsOf,
  gapIn,
  type LaidFold,
  laidFold,
  offsetsOf,
  type Task,
  turningWish,
  unknownsOf,
} from './laid-fold.js';
import { further, PLACEMENT } from './motion.js';
import type { Wish } from './wish.js';

/** How much more the gap between the ends counts than the mean distance from the drawing. */
const GAP = 20;

/**
 * How much a turn of one degree more or less counts, as a distance of every
 * point from the drawing in smallest marks.
 */
const PER_DEGREE = 0.25;

/** How much more a gap between the ends counts than a point that is off: there a tab must lie flat. */
export const GAP_COUNTS = 3;

/** How much more the turning counts than a point as far off as points may be. */
const TURNING = 1e4;

/** What a turn of a radian more or less counts beside the distances: only what settles a tie. */
const TIE = 0.001;

/** That all points lie on their places, the ends meet, and the turns stay near those drawn. */
export function nearestWishes(laid: LaidFold, task: Task, smallestMark: number): Wish[] {
  const effects = effectsOf(laid, task);
  const points = offsetsOf(laid, task).flatMap((off, index): Wish[] => {
    const [effect, weight = 0] = [effects[index], task.target.weights[index]];
    return effect === undefined
      ? []
      : [
          { row: effect.x, off: off.x, weight },
          { row: effect.y, off: off.y, weight },
        ];
  });
  const hold = ((PER_DEGREE * smallestMark) / toRadians(1)) ** 2 / laid.turns.length;
  const [gap, onGap] = [gapIn(laid, task), effectOnGap(laid, task)];
  return [
    ...points,
    { row: onGap.x, off: gap.x, weight: GAP },
    { row: onGap.y, off: gap.y, weight: GAP },
    turningWish(laid, task, GAP),
    ...drawnWishes(laid, task, hold),
  ];
}

/**
 * The largest distance of a point from its place, or what the gap counts, made
 * least by the turns and the placement.
 */
export function centringTurns(task: Task): Centring<LaidFold> {
  return {
    size: unknownsOf(task),
    offsets: (laid) => {
      const gap = gapIn(laid, task);
      return [...offsetsOf(laid, task), point(GAP_COUNTS * gap.x, GAP_COUNTS * gap.y)];
    },
    effects: (laid) => {
      const { x, y } = effectOnGap(laid, task);
      const counted = (row: Float64Array) => row.map((entry) => GAP_COUNTS * entry);
      return [...effectsOf(laid, task), { x: counted(x), y: counted(y) }];
    },
    wishes: (laid, bound) => [
      turningWish(laid, task, TURNING / bound ** 2),
      ...drawnWishes(laid, task, TIE),
    ],
    changed: ({ turns, motion }, change, share) =>
      laidFold(
        task,
        turns.map((turn, n) => turn + share * task.step * (change[PLACEMENT + n] ?? 0)),
        () => further(motion, change, share),
      ),
  };
}
