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

/** Steps that it takes to keep another lot in mind. */
const TO_REMEMBER = 20;

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
 * what is left. Of the class with the most choices the two halves are looked through each by
 * itself, and then put together (Horowitz and Sahni 1974, "Computing partitions with
 * applications to the knapsack problem").
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
    let best: { readonly loss: number; readonly halves: readonly Taken[] } | undefined;
    for (let count = entry.least; count <= entry.most; count++) {
      // Those of the second half lose more each; together they are looked up.
      const second = Math.floor(count / 2);
      const lots = this.#with(entry, before, count, second);
      const others = this.#sheets(entry, second);
      if (lots === undefined || others === undefined) return undefined;
      for (const [pieces, taken] of lots) {
        const other = others.get(all - pieces);
        if (other === undefined) continue;
        const loss = taken.loss + other.loss;
        if (loss > this.#gap || loss >= (best?.loss ?? Number.POSITIVE_INFINITY)) continue;
        best = { loss, halves: [taken, other] };
      }
    }
    return best === undefined ? 'none' : { loss: best.loss, yields: best.halves.flatMap(yieldsOf) };
  }

  /** Every lot that so many sheets of a class yield together. */
  #sheets(entry: YieldingClass, count: number): Lots | undefined {
    let lots: Lots = new Map([[0, { loss: 0 }]]);
    for (let left = count; left > 0; left--) {
      const next = this.#withOne(entry, lots, left);
      if (next === undefined) return undefined;
      lots = next;
    }
    return lots;
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
        const added = put(next, pieces + yields[i].pieces, {
          loss,
          before: taken,
          found: yields[i],
        });
        if (added && !this.#steps.take(TO_REMEMBER)) return undefined;
      }
    }
    return next;
  }
}

/** Keeps the way to a lot that loses least. @returns whether there was none before */
function put(lots: Lots, pieces: number, taken: Taken): boolean {
  const known = lots.get(pieces);
  if (known === undefined || taken.loss < known.loss) lots.set(pieces, taken);
  return known === undefined;
}

function yieldsOf(last: Taken): readonly SheetYield[] {
  const yields: SheetYield[] = [];
  for (let taken: Taken | undefined = last; taken !== undefined; taken = taken.before) {
    if (taken.found !== undefined) yields.push(taken.found);
  }
  return yields;
}
