import { type EntropyColumn, MaxEntropy, type SolveLimits } from '../entropy/max-entropy.js';
import type { BandBook } from '../master/band-book.js';

export interface PlanEntropyRequest {
  readonly book: BandBook;
  readonly demand: readonly number[];
  /** By box, how many sheets there are; all of them are cut. */
  readonly counts: readonly number[];
  /** What each piece is worth in the linear plan, in any unit. */
  readonly worth: readonly number[];
  /** Asked now and then; true gives up. */
  readonly over?: (() => boolean) | undefined;
}

/** The numbers of sheet patterns and bands in plans that cut a demand, and their entropy. */
export interface PlanEntropy {
  /** Sheet patterns and bands of the book: the first columns, in this order. */
  readonly sheets: readonly number[];
  readonly bands: readonly number[];
  /** Slots of the book, in the order of their rows, which come after those of the pieces. */
  readonly slots: readonly number[];
  /** Box of each sheet pattern, and the first of the boxes' rows, which come last. */
  readonly boxes: readonly number[];
  readonly firstBox: number;
  readonly numbers: MaxEntropy;
  /** Right-hand side: the demand, nothing for each slot, and the sheets of each box. */
  readonly right: Float64Array;
  /** What each piece is worth, in units of entropy. */
  readonly worth: readonly number[];
  readonly entropy: number;
}

type Patterns = Pick<PlanEntropy, 'sheets' | 'bands'>;
type Opened = Omit<PlanEntropy, 'worth' | 'entropy'>;

/** What pieces are taken to be worth on average at first, and the least of one. */
const FIRST_WORTH = 30;
const LEAST_WORTH = 0.05;
/** What patterns lose at first beside the best ones. */
const FIRST_LOSS = 0.3;
/** What going without a piece loses while the worth of pieces is not known yet. */
const FORBIDDEN = 10_000;
/** Expected numbers below which patterns, and slots, are left out. */
const RARE_SHEET = 1e-5;
const RARE_BAND = 1e-6;
const RARE_SLOT = 1e-4;
const FIRST: SolveLimits = { near: 1e-3, steps: 150 };
const NEXT: SolveLimits = { near: 1e-3, steps: 60 };

/** Rows beyond which a step of Newton's method takes too long: it grows with their cube. */
export const MOST_ROWS = 600;

/** What going without a piece loses: more than it is worth, so that it is done in need only. */
export function lossOfLack(worth: number): number {
  return 1.3 * worth + 8;
}

/** What pieces are worth, in units of entropy as far as is known before anything is solved. */
export function firstWorth(worth: readonly number[]): readonly number[] {
  const mean = worth.reduce((sum, value) => sum + value, 0) / worth.length;
  // Where there is room for anything, nothing is worth anything.
  if (!(mean > 0)) return worth.map(() => FIRST_WORTH);
  return worth.map((value) => Math.max(LEAST_WORTH, (FIRST_WORTH * value) / mean));
}

/**
 * The most even of all plans that cut a demand from so many sheets; it may break sheets and
 * bands. Patterns that hardly any plan has are left out.
 * @returns undefined where these patterns make no plan without a piece lacking, are too many,
 *   or numbers are beyond doubles
 */
export function planEntropy(request: PlanEntropyRequest): PlanEntropy | undefined {
  const { book, demand, counts, over } = request;
  const start = firstWorth(request.worth);
  const ofUse = [...book.sheets.keys()].filter((sheet) => counts[book.sheets[sheet].box] > 0);
  const all = matching(book, { sheets: ofUse, bands: [...book.bands.keys()] });
  const first = opened(
    request,
    all,
    demand.map(() => FORBIDDEN),
  );
  if (first.numbers.rows > MOST_ROWS) return undefined;
  setMultipliers(first, book, start);
  if (first.numbers.solve(first.right, { ...FIRST, over }) === undefined) return undefined;
  const worth = demand.map((_, piece) => -first.numbers.multipliers[piece]);
  if (worth.some((value) => value > FORBIDDEN / 2)) return undefined;
  const plan = opened(request, likelyOf(book, first), worth.map(lossOfLack));
  const { multipliers } = plan.numbers;
  multipliers.set(first.numbers.multipliers.subarray(0, demand.length));
  plan.slots.forEach((slot, index) => {
    const before = demand.length + first.slots.indexOf(slot);
    multipliers[demand.length + index] = first.numbers.multipliers[before];
  });
  multipliers.set(first.numbers.multipliers.subarray(first.firstBox), plan.firstBox);
  const entropy = plan.numbers.solve(plan.right, { ...NEXT, over });
  return entropy === undefined ? undefined : { ...plan, worth, entropy };
}

/** The row that counts the sheets of a pattern's box. */
export function boxRowOf({ boxes, firstBox }: PlanEntropy, pattern: number): number {
  return firstBox + boxes[pattern];
}

/** Sheets all of whose slots have bands, and the bands of their slots. */
function matching(book: BandBook, { sheets, bands }: Patterns): Patterns {
  const filled = new Set(bands.map((band) => book.bands[band].slot));
  const full = sheets.filter((sheet) =>
    book.sheets[sheet].slots.every(([slot]) => filled.has(slot)),
  );
  const there = new Set(full.flatMap((sheet) => book.sheets[sheet].slots.map(([slot]) => slot)));
  return { sheets: full, bands: bands.filter((band) => there.has(book.bands[band].slot)) };
}

function likelyOf(book: BandBook, { sheets, bands, numbers: { amounts } }: Opened): Patterns {
  const inSlot = new Map<number, number>();
  sheets.forEach((sheet, column) => {
    for (const [slot, copies] of book.sheets[sheet].slots) {
      inSlot.set(slot, (inSlot.get(slot) ?? 0) + copies * amounts[column]);
    }
  });
  const common = (slot: number) => (inSlot.get(slot) ?? 0) > RARE_SLOT;
  return matching(book, {
    sheets: sheets.filter(
      (sheet, column) =>
        amounts[column] > RARE_SHEET && book.sheets[sheet].slots.every(([slot]) => common(slot)),
    ),
    bands: bands.filter(
      (band, index) => amounts[sheets.length + index] > RARE_BAND && common(book.bands[band].slot),
    ),
  });
}

function opened(
  { book, demand, counts }: PlanEntropyRequest,
  { sheets, bands }: Patterns,
  lossOfEach: readonly number[],
): Opened {
  const slots = [...new Set(bands.map((band) => book.bands[band].slot))];
  const rows = new Map(slots.map((slot, index) => [slot, demand.length + index]));
  const rowOf = (slot: number) => rows.get(slot) ?? 0;
  const firstBox = demand.length + slots.length;
  const boxes = sheets.map((sheet) => book.sheets[sheet].box);
  const columns: EntropyColumn[] = [
    ...sheets.map((sheet, index) => ({
      entries: [
        ...book.sheets[sheet].slots.map(([slot, copies]) => [rowOf(slot), copies] as const),
        [firstBox + boxes[index], 1] as const,
      ],
      energy: 0,
    })),
    ...bandColumns(book, bands, rowsOf(book, bands, rowOf)),
    ...restColumns(lossOfEach, slots.length),
  ];
  const right = new Float64Array(firstBox + counts.length);
  right.set(demand);
  // Sheets that nothing can be cut from are not counted.
  const cut = new Set(boxes);
  counts.forEach((count, box) => {
    right[firstBox + box] = cut.has(box) ? count : 0;
  });
  const numbers = new MaxEntropy(right.length, columns);
  return { sheets, bands, slots, boxes, firstBox, numbers, right };
}

function rowsOf(
  book: BandBook,
  bands: readonly number[],
  rowOf: (slot: number) => number,
): readonly number[] {
  return bands.map((band) => rowOf(book.bands[band].slot));
}

/** Bands, each of which takes a slot, whose row stands in `rows`, and gives pieces. */
export function bandColumns(
  book: BandBook,
  bands: readonly number[],
  rows: readonly number[],
): readonly EntropyColumn[] {
  return bands.map((band, index) => ({
    entries: [...book.bands[band].counts, [rows[index], -1]],
    energy: 0,
  }));
}

/** Pieces to spare, pieces that lack, and slots left empty, for the rows of pieces and slots. */
export function restColumns(
  lossOfEach: readonly number[],
  slots: number,
): readonly EntropyColumn[] {
  const pieces = lossOfEach.length;
  return [
    ...lossOfEach.map((_, piece) => ({ entries: [[piece, -1]] as const, energy: 0 })),
    ...lossOfEach.map((energy, piece) => ({ entries: [[piece, 1]] as const, energy })),
    ...Array.from({ length: slots }, (_, slot) => ({
      entries: [[pieces + slot, -1]] as const,
      energy: 0,
    })),
  ];
}

/** Multipliers of pieces and slots by which every band loses something. */
export function setBandMultipliers(
  multipliers: Float64Array,
  book: BandBook,
  bands: readonly number[],
  rows: readonly number[],
  worth: readonly number[],
): void {
  multipliers.fill(-FIRST_LOSS);
  worth.forEach((value, piece) => {
    multipliers[piece] = -value;
  });
  bands.forEach((band, index) => {
    const { counts } = book.bands[band];
    const value = counts.reduce((sum, [piece, copies]) => sum + worth[piece] * copies, FIRST_LOSS);
    multipliers[rows[index]] = Math.min(multipliers[rows[index]], -value);
  });
}

function setMultipliers(plan: Opened, book: BandBook, worth: readonly number[]): void {
  const { sheets, bands, slots, boxes, firstBox, numbers } = plan;
  const { multipliers } = numbers;
  const rows = new Map(slots.map((slot, index) => [slot, worth.length + index]));
  const rowOf = (slot: number) => rows.get(slot) ?? 0;
  setBandMultipliers(multipliers, book, bands, rowsOf(book, bands, rowOf), worth);
  multipliers.fill(FIRST_LOSS, firstBox);
  sheets.forEach((sheet, index) => {
    const value = book.sheets[sheet].slots.reduce(
      (sum, [slot, copies]) => sum - copies * multipliers[rowOf(slot)],
      FIRST_LOSS,
    );
    const row = firstBox + boxes[index];
    multipliers[row] = Math.max(multipliers[row], value);
  });
}
