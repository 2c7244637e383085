import type { BandBook } from '../master/band-book.js';
import { type Change, SwapIndex } from './swap-index.js';

export interface SwapRequest {
  readonly book: BandBook;
  /** How many of each band of the book are cut; none of those beyond the last. */
  readonly counts: readonly number[];
  readonly demand: readonly number[];
  /** What each piece is worth, at least 0. */
  readonly values: readonly number[];
  /** What spare pieces may be worth in all, since there is room for no more. */
  readonly room: number;
}

/** A change that is sought, and the worth of what lacks after it. */
interface Target {
  readonly change: Change;
  readonly lacking: number;
}

const EPSILON = 1e-9;
/** Changes that are sought at most; 24 kinds of pieces have about 700, and a hundred 20 times as many. */
const MOST_TARGETS = 1_500;
/** Steps of search for three swaps: less than a tenth of a second. Where three were found, 0.6 million had done. */
const STEPS_FOR_THREE = 4_000_000;

/**
 * Swaps up to three bands for others of their slots, time and again, as long as what lacks
 * becomes worth less: where a piece lacks and another is spare, the right few bands often
 * make up for it.
 * @returns how many of each band are cut then; undefined where nothing gains
 */
export function swapBands(request: SwapRequest): readonly number[] | undefined {
  let counts: readonly number[] | undefined;
  for (;;) {
    const next = swapped({ ...request, counts: counts ?? request.counts });
    if (next === undefined) return counts;
    counts = next;
  }
}

function swapped(request: SwapRequest): readonly number[] | undefined {
  const { book, counts } = request;
  const targets = targetsOf(request);
  if (targets.length === 0) return undefined;
  const index = new SwapIndex(book, counts, request.values);
  const steps = { left: STEPS_FOR_THREE };
  const found =
    first(targets, ({ change }) => index.find(change)) ??
    first(targets, ({ change }) => index.findThree(change, steps));
  if (found === undefined) return undefined;
  const next = book.bands.map((_, band) => counts[band] ?? 0);
  for (const { from, to } of found) {
    next[from]--;
    next[to]++;
  }
  return next;
}

/** What the first gives for which there is anything. */
function first<T, R>(all: readonly T[], of: (one: T) => R | undefined): R | undefined {
  for (const one of all) {
    const found = of(one);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Changes after which less lacks, the best first: nothing or one piece, and one piece is spare at most, or those that are now. */
function targetsOf({ book, counts, demand, values, room }: SwapRequest): readonly Target[] {
  const spare = demand.map((quantity) => -quantity);
  book.bands.forEach((band, index) => {
    for (const [piece, copies] of band.counts) spare[piece] += copies * (counts[index] ?? 0);
  });
  const now = worthOfLack(spare, values);
  const after = new Map<string, readonly number[]>();
  const consider = (there: readonly number[]) => after.set(there.join(), there);
  const none = spare.map(() => 0);
  const asNow = spare.map((copies) => Math.max(0, copies));
  const spares = [
    none,
    ...values.flatMap((value, piece) => (value <= room ? [plus(none, piece, 1)] : [])),
    asNow,
    ...asNow.flatMap((copies, piece) => (copies > 0 ? [plus(asNow, piece, -1)] : [])),
  ];
  for (const some of spares) {
    consider(some);
    for (const piece of spare.keys()) consider(plus(some, piece, -1));
  }
  return [...after.values()]
    .map((there) => ({
      change: Int32Array.from(there, (copies, piece) => copies - spare[piece]),
      lacking: worthOfLack(there, values),
    }))
    .filter(({ lacking }) => lacking < now - EPSILON)
    .sort((a, b) => a.lacking - b.lacking)
    .slice(0, MOST_TARGETS);
}

function plus(copies: readonly number[], piece: number, more: number): readonly number[] {
  return copies.map((count, i) => (i === piece ? count + more : count));
}

function worthOfLack(spare: readonly number[], values: readonly number[]): number {
  return spare.reduce((sum, copies, piece) => sum + Math.max(0, -copies) * values[piece], 0);
}
