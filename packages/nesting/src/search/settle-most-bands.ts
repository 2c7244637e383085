import type { BandAnswer } from '../master/band-master.js';
import { brokenBands, openBands, wholeBands } from './broken-bands.js';
import { settleOneBand } from './settle-one-band.js';
import type { SettledMaster } from './settled-master.js';

/** So many bands are left open. */
const BANDS_OPEN = 7;
/** The share of the room for spare pieces that settling whole numbers of a band may use up. */
const MAY_LOSE = 0.3;
/** How many broken bands are tried before one is settled, and what may be lost by the first that will do. */
const TRIED = 4;
const LITTLE = 0.0005;
/** A linear plan that goes without so much is not broken up further. */
const HOPELESS = 0.6;
const ROUNDS_EACH = 2;
const EPSILON = 1e-6;

/**
 * Settles bands about as the linear plan has them, whole numbers first and then one broken band
 * after the other, until few are open or more would lack than is of use.
 * @param master whose sheets are settled; its settled bands are what comes of it
 * @param start its linear plan, no band settled
 * @param over asked now and then; true ends it
 * @returns the linear plan then
 */
export async function settleMostBands(
  master: Pick<SettledMaster, 'bands' | 'settleBand' | 'solve'>,
  start: BandAnswer,
  random: () => number,
  over: () => boolean,
): Promise<BandAnswer> {
  const most = start.cost + MAY_LOSE * Math.abs(start.cost);
  let answer = start;
  for (let settled = true; settled; ) {
    settled = false;
    for (const band of wholeBands(answer, random)) {
      if (openBands(master, answer) <= BANDS_OPEN || over()) return answer;
      const count = Math.floor(answer.bands[band] - (master.bands[band] ?? 0) + EPSILON);
      if (count === 0) continue;
      master.settleBand(band, count);
      const next = await master.solve(ROUNDS_EACH, most);
      if (next !== undefined && next.cost <= most) {
        answer = next;
        settled = true;
      } else {
        master.settleBand(band, -count);
      }
    }
  }
  while (openBands(master, answer) > BANDS_OPEN) {
    const next = await settleOneBand(master, answer, brokenBands(master, answer, random), {
      tried: TRIED,
      little: LITTLE,
      rounds: ROUNDS_EACH,
    });
    if (next === undefined || next.cost > HOPELESS) return answer;
    answer = next;
  }
  return answer;
}
