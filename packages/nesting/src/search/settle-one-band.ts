import type { BandAnswer } from '../master/band-master.js';
import type { SettledMaster } from './settled-master.js';

export interface OneBandRequest {
  /** How many are tried. */
  readonly tried: number;
  /** What may be lost by the first that will do. */
  readonly little: number;
  /** Rounds of column generation after each trial. */
  readonly rounds: number;
}

/**
 * Settles one more band of those that are broken: the first that costs the linear plan next to
 * nothing, or the one that costs it least.
 * @param open their indices, the likeliest first
 * @returns the linear plan then; undefined where there is none with any of them, or no time
 */
export async function settleOneBand(
  master: Pick<SettledMaster, 'settleBand' | 'solve'>,
  answer: BandAnswer,
  open: readonly number[],
  { tried, little, rounds }: OneBandRequest,
): Promise<BandAnswer | undefined> {
  let best: { index: number; next: BandAnswer } | undefined;
  for (const index of open.slice(0, tried)) {
    master.settleBand(index, 1);
    const next = await master.solve(rounds, answer.cost + little);
    if (next !== undefined && next.cost <= answer.cost + little) return next;
    master.settleBand(index, -1);
    if (next !== undefined && (best === undefined || next.cost < best.next.cost)) {
      best = { index, next };
    }
  }
  if (best === undefined) return undefined;
  master.settleBand(best.index, 1);
  return best.next;
}
