import { decimateBands } from './decimate-bands.js';
import { fillOpenBands } from './fill-open-bands.js';
import type { SearchGround } from './ground.js';
import type { DecimatedBands, OpenBands } from './open-bands.js';
import { solveWholeBands } from './whole-bands-master.js';

export interface DecimationRequest {
  readonly open: OpenBands;
  /** Of each piece in the linear plan, in any unit. */
  readonly worth: readonly number[];
  /** What going without each piece counts. */
  readonly weights: readonly number[];
  /** True where there is so little room that decimation hardly ever does to the end. */
  readonly littleRoom: boolean;
  readonly random: () => number;
}

/** Bands that are left to an integer master that must cut all, and nodes it may take. */
const MANY_LEFT = 30;
const NODES = 500;
/** Bands that are left to one that may go without some, and pieces that may lack by then. */
const FEW_LEFT = 6;
const MOST_LACKING = 1.5;

/**
 * Fills open slots with whole bands: most are settled by decimation, other ones each time, and the
 * last ones by an integer master. Decimation to the end is quick, but takes the last bands one by
 * one where only some sets of them would do; for that many are left to a master, which takes
 * longer where it is not clear at once that they will not do.
 * @returns by band of the book, how many there are; something may lack. Undefined where more would
 *   lack than few other bands make up for, or there is no time.
 */
export async function fillByDecimation(
  ground: SearchGround,
  { open, worth, weights, littleRoom, random }: DecimationRequest,
): Promise<readonly number[] | undefined> {
  const over = () => ground.deadline.left() <= 0;
  const most = decimateBands(open, worth, MANY_LEFT, random, over);
  if (most === undefined) return undefined;
  const toTheEnd = () => decimatedToTheEnd(ground, most, { worth, weights, random });
  if (littleRoom) return (await filledByMaster(ground, most)) ?? (over() ? undefined : toTheEnd());
  const filled = await toTheEnd();
  if ((filled !== undefined && cutsAll(open, filled)) || over()) return filled;
  return (await filledByMaster(ground, most)) ?? filled;
}

/** Undefined where the likely bands will not do, or that was not known in time. */
async function filledByMaster(
  ground: SearchGround,
  most: DecimatedBands,
): Promise<readonly number[] | undefined> {
  const answer = await solveWholeBands(ground, most, { nodes: NODES });
  return typeof answer === 'string' ? undefined : added(most.taken, answer.bands);
}

async function decimatedToTheEnd(
  ground: SearchGround,
  most: DecimatedBands,
  { worth, weights, random }: Pick<DecimationRequest, 'worth' | 'weights' | 'random'>,
): Promise<readonly number[] | undefined> {
  const over = () => ground.deadline.left() <= 0;
  const end = decimateBands(most, worth, FEW_LEFT, random, over);
  if (end === undefined) return undefined;
  const left = end.slots.reduce((sum, count) => sum + count, 0);
  if (left <= FEW_LEFT && end.lacking > MOST_LACKING) return undefined;
  const filled = await fillOpenBands(ground, end, weights);
  return filled && added(most.taken, filled);
}

function added(one: readonly number[], other: readonly number[]): readonly number[] {
  return one.map((count, band) => count + (other[band] ?? 0));
}

function cutsAll({ book, demand }: OpenBands, counts: readonly number[]): boolean {
  const left = [...demand];
  counts.forEach((count, band) => {
    if (count > 0) {
      for (const [piece, copies] of book.bands[band].counts) left[piece] -= copies * count;
    }
  });
  return left.every((count) => count <= 0);
}
