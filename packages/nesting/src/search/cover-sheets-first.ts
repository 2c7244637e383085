import type { BandBook } from '../master/band-book.js';
import type { BandAnswer } from '../master/band-master.js';
import type { Cap } from '../master/objective.js';
import type { Covered } from './cover.js';
import type { SearchGround } from './ground.js';
import { settleRest } from './settle-rest.js';
import { settleSupplies } from './settle-supplies.js';
import { SettledMaster } from './settled-master.js';

export interface SheetsFirstRequest {
  /** Likely patterns, many of them. */
  readonly book: BandBook;
  readonly caps: readonly Cap[];
  /** What going without a piece counts. */
  readonly weights: readonly number[];
  readonly random: () => number;
}

/** The least and the most that a piece counts in a measure of spare pieces. */
const SPARE = [0.5, 1.5];
/** How many are tried before one is settled, and what may be lost by the first that will do. */
const TRIED = 4;
const LITTLE = 0.02;
/** Once no more bands than this are open, the integer master settles the rest. */
const BANDS_OPEN = 4;
/** How far noise may change the weight of what is broken, as a share. */
const NOISE = 0.5;
/** Rounds of column generation each time a band was settled. */
const ROUNDS_EACH = 3;
/** How far from the linear plan numbers of the dearest sheets are tried. */
const APART = 3;
const EPSILON = 1e-6;

/**
 * Cuts as much of the demand as the caps allow where there are many of each piece:
 * settles the sheets first, while their bands may still be broken, such that as
 * many spare pieces as possible could be cut; then the bands, which the spare
 * pieces leave room to round. An integer master cuts the last few.
 */
export async function coverSheetsFirst(
  ground: SearchGround,
  request: SheetsFirstRequest,
): Promise<Covered | undefined> {
  const { book, caps, weights, random } = request;
  const { demand, classes } = ground;
  const [least, most] = SPARE;
  const mean = weights.reduce((sum, weight) => sum + weight, 0) / weights.length;
  const master = new SettledMaster(ground, {
    demand,
    classes,
    objective: { cost: undefined, caps },
    losses: weights.map((weight) => weight / mean),
    spare: demand.map(() => least + (most - least) * random()),
    book,
  });
  try {
    let answer = await settleSupplies(ground, master, await master.solve(1), APART, 1);
    while (answer !== undefined) {
      const open = openSheets(master, answer, random);
      const fix = (sheet: number, count: number) => master.settleSheet(sheet, count);
      const next = open.length === 0 ? undefined : await settleOne(master, answer, open, fix, 1);
      if (next === undefined) break;
      answer = next;
    }
    while (answer !== undefined) {
      const open = openBands(master, answer, random);
      if (open.length <= BANDS_OPEN) break;
      const fix = (band: number, count: number) => master.settleBand(band, count);
      answer = await settleOne(master, answer, open, fix, ROUNDS_EACH);
    }
    if (answer === undefined) return undefined;
    const last = { classes, caps, weights, cutoff: undefined };
    return await settleRest(ground, last, master, book, answer);
  } finally {
    master.close();
  }
}

/** Settles the whole parts of sheet patterns; those that are broken, most first. */
function openSheets(
  master: SettledMaster,
  { sheets }: BandAnswer,
  random: () => number,
): readonly number[] {
  const left = (sheet: number) => sheets[sheet] - (master.sheets[sheet] ?? 0);
  return settleWhole(sheets, left, (sheet, count) => master.settleSheet(sheet, count), random);
}

/** Settles the whole parts of bands; those that are broken, most first. */
function openBands(
  master: SettledMaster,
  { bands }: BandAnswer,
  random: () => number,
): readonly number[] {
  const left = (band: number) => bands[band] - (master.bands[band] ?? 0);
  return settleWhole(bands, left, (band, count) => master.settleBand(band, count), random);
}

function settleWhole(
  amounts: readonly number[],
  left: (index: number) => number,
  fix: (index: number, count: number) => void,
  random: () => number,
): readonly number[] {
  const open: { index: number; part: number }[] = [];
  amounts.forEach((_, index) => {
    const amount = left(index);
    const whole = Math.floor(amount + EPSILON);
    if (whole > 0) fix(index, whole);
    if (amount - whole > EPSILON) {
      open.push({ index, part: (amount - whole) * (1 + NOISE * (random() - 0.5)) });
    }
  });
  return open.sort((a, b) => b.part - a.part || a.index - b.index).map(({ index }) => index);
}

/**
 * Settles one more of those of which there is most, the one that costs the linear plan
 * least.
 * @returns the linear plan then; undefined where there is none
 */
async function settleOne(
  master: SettledMaster,
  answer: BandAnswer,
  open: readonly number[],
  fix: (index: number, count: number) => void,
  rounds: number,
): Promise<BandAnswer | undefined> {
  let best: { index: number; next: BandAnswer } | undefined;
  for (const index of open.slice(0, TRIED)) {
    fix(index, 1);
    const next = await master.solve(rounds);
    if (next !== undefined && next.cost <= answer.cost + LITTLE) return next;
    fix(index, -1);
    if (next !== undefined && (best === undefined || next.cost < best.next.cost)) {
      best = { index, next };
    }
  }
  if (best === undefined) return undefined;
  fix(best.index, 1);
  return best.next;
}
