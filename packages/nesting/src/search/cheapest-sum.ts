import type { PieceNumbers } from './piece-numbers.js';
import type { SheetYield } from './sheet-yields.js';
import type { Steps } from './steps.js';

/** The sheets of one class, of which a plan takes some. */
export interface YieldingClass {
  /** Sheets at least and at most. */
  readonly least: number;
  readonly most: number;
  /** What taking so many loses by itself, whatever they yield. */
  readonly lossOf: (count: number) => number;
  /** Ascending by what they lose. */
  readonly yields: readonly SheetYield[];
}

export interface CheapestSum {
  /** In all. */
  readonly loss: number;
  /** One for each sheet. */
  readonly yields: readonly SheetYield[];
}

/** Sheets that were taken, the last of them first. */
interface Taken {
  readonly loss: number;
  readonly found?: SheetYield;
  readonly before?: Taken;
}

/** By the pieces that they give. */
type Lots = Map<number, Taken>;

/**
 * Chooses sheets that together yield just what is wanted, and lose least. Class by class and
 * sheet by sheet, of all ways to the same lot of pieces the one is kept which loses least. Of
 * equal sheets the one that loses least is taken first, so that it may lose only its share of
 * what is left; the last sheet of all is looked up.
 * @param gap the most that they may lose
 * @returns `none` where nothing loses so little; undefined where it is too much to look through
 */
export function cheapestSum(
  classes: readonly YieldingClass[],
  numbers: PieceNumbers,
  gap: number,
  steps: Steps,
): CheapestSum | 'none' | undefined {
  return new SumSearch(numbers, gap, steps).run(classes);
}

class SumSearch {
  readonly #numbers: PieceNumbers;
  readonly #gap: number;
  readonly #steps: Steps;

  constructor(numbers: PieceNumbers, gap: number, steps: Steps) {
    this.#numbers = numbers;
    this.#gap = gap;
    this.#steps = steps;
  }

  run(classes: readonly YieldingClass[]): CheapestSum | 'none' | undefined {
    const width = ({ most, yields }: YieldingClass) => most * yields.length;
    const order = [...classes].sort((a, b) => width(a) - width(b));
    const last = order.pop();
    if (last === undefined) return 'none';
    let lots: Lots = new Map([[0, { loss: 0 }]]);
    for (const entry of order) {
      const after: Lots = new Map();
      for (let count = entry.least; count <= entry.most; count++) {
        const more = this.#with(entry, lots, count, 0);
        if (more === undefined) return undefined;
        for (const [pieces, taken] of more) put(after, pieces, taken);
      }
      lots = after;
    }
    return this.#completed(last, lots);
  }

  /** The best way to come up to the demand with sheets of the last class. */
  #completed(entry: YieldingClass, before: Lots): CheapestSum | 'none' | undefined {
    const { all } = this.#numbers;
    const known = new Map(entry.yields.map((found) => [found.pieces, found]));
    let best: Taken | undefined;
    for (let count = entry.least; count <= entry.most; count++) {
      const lots = this.#with(entry, before, count, 1);
      if (lots === undefined) return undefined;
      for (const [pieces, taken] of lots) {
        const found = count > 0 ? known.get(all - pieces) : undefined;
        if (count === 0 ? pieces !== all : found === undefined) continue;
        const loss = taken.loss + (found?.loss ?? 0);
        if (loss > this.#gap || loss >= (best?.loss ?? Number.POSITIVE_INFINITY)) continue;
        best = { loss, before: taken, ...(found === undefined ? {} : { found }) };
      }
    }
    return best === undefined ? 'none' : { loss: best.loss, yields: yieldsOf(best) };
  }

  /** Every lot with so many sheets of a class, the last `open` of them not chosen yet. */
  #with(entry: YieldingClass, before: Lots, count: number, open: number): Lots | undefined {
    const own = entry.lossOf(count);
    let lots: Lots = new Map();
    for (const [pieces, taken] of before) {
      const loss = taken.loss + own;
      if (loss <= this.#gap) lots.set(pieces, { ...taken, loss });
    }
    for (let left = count; left > open; left--) {
      const next = this.#withOne(entry, lots, left);
      if (next === undefined) return undefined;
      lots = next;
    }
    return lots;
  }

  /** @param left sheets, each of which loses no less than this one */
  #withOne({ yields }: YieldingClass, lots: Lots, left: number): Lots | undefined {
    const { all } = this.#numbers;
    const copies = yields.map(({ pieces }) => this.#numbers.copies(pieces));
    const next: Lots = new Map();
    for (const [pieces, taken] of lots) {
      const wanted = this.#numbers.copies(all - pieces);
      const most = (this.#gap - taken.loss) / left;
      if (!this.#steps.take(1)) return undefined;
      for (let i = 0; i < yields.length && yields[i].loss <= most; i++) {
        if (!this.#steps.take(1)) return undefined;
        if (copies[i].some((own, piece) => own > wanted[piece])) continue;
        const loss = taken.loss + yields[i].loss;
        put(next, pieces + yields[i].pieces, { loss, before: taken, found: yields[i] });
      }
    }
    return next;
  }
}

function put(lots: Lots, pieces: number, taken: Taken): void {
  if (taken.loss < (lots.get(pieces)?.loss ?? Number.POSITIVE_INFINITY)) lots.set(pieces, taken);
}

function yieldsOf(last: Taken): readonly SheetYield[] {
  const yields: SheetYield[] = [];
  for (let taken: Taken | undefined = last; taken !== undefined; taken = taken.before) {
    if (taken.found !== undefined) yields.push(taken.found);
  }
  return yields;
}
