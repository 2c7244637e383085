import { kindPricers } from './kind-pricers.js';
import { type StockClass, stockClasses } from './master/stock-class.js';
import type { CuttingRules } from './pattern/cutting-rules.js';
import { legal } from './pattern/legal.js';
import type { Part } from './pattern/part.js';
import type { PatternPricer } from './pattern/pattern-pricer.js';
import type { PlanOutcome } from './plan.js';
import type { CuttingProblem, Stock } from './problem.js';

type Misfit = Extract<
  PlanOutcome,
  { status: 'piece too large' | 'piece too narrow' | 'not enough stock' }
>;

/** Pricings made whether there is time for them or not. */
const PRICED_ANYWAY = 4;

/**
 * What cannot be cut from any of the stock, however it is cut.
 * @param over true gives up on pieces that only pricing could rule out
 * @returns undefined where every piece that is wanted fits somewhere, or was not ruled out
 */
export function misfits(
  problem: CuttingProblem,
  classes: readonly StockClass[],
  rules: CuttingRules,
  over: () => boolean,
): Misfit | undefined {
  const wanted = problem.pieces.flatMap((piece, i) => (piece.quantity > 0 ? [i] : []));
  const short = new Fitting(problem, rules, over).unfit(wanted, classes);
  if (short.length === 0) return undefined;
  // There may be none of the stock that they fit.
  const listed = { ...problem, stock: problem.stock.map(atLeastOne) };
  const unfit = new Fitting(listed, rules, over).unfit(short);
  if (unfit.length === 0) return { status: 'not enough stock' };
  const narrow = unfit.filter((i) => {
    const { length, width } = problem.pieces[i];
    return Math.min(length, width) < rules.limits.narrowest;
  });
  const id = (i: number) => problem.pieces[i].id;
  if (narrow.length > 0) return { status: 'piece too narrow', pieces: narrow.map(id) };
  const unlimited = {
    ...rules,
    limits: { ...rules.limits, longestCut: Number.POSITIVE_INFINITY },
  };
  const still = new Set(new Fitting(listed, unlimited, over).unfit(unfit));
  return {
    status: 'piece too large',
    pieces: unfit.map(id),
    largestStock: largestStock(problem),
    forTheShear: unfit.filter((i) => !still.has(i)).map(id),
  };
}

/** Which pieces can be cut from some stock. */
class Fitting {
  readonly #problem: CuttingProblem;
  readonly #rules: CuttingRules;
  readonly #over: () => boolean;
  #pricings = 0;

  constructor(problem: CuttingProblem, rules: CuttingRules, over: () => boolean) {
    this.#problem = problem;
    this.#rules = rules;
    this.#over = over;
  }

  /** @returns those of some pieces that no pattern holds */
  unfit(
    pieces: readonly number[],
    classes = stockClasses(this.#problem, this.#rules.limits, () => 0),
  ): readonly number[] {
    const laid = new Set(classes.flatMap(({ box }) => box.lays.map(({ piece }) => piece)));
    const without = pieces.filter((piece) => !laid.has(piece));
    const unsure = pieces.filter(
      (piece) => laid.has(piece) && !fitsAlone(piece, classes, this.#rules),
    );
    if (unsure.length === 0) return without;
    // A piece that is not freed by two cuts may be freed by more.
    const { exact } = kindPricers(this.#rules.stages, {
      boxes: classes.map(({ box }) => box),
      demand: this.#problem.pieces.map((piece) => Math.max(1, piece.quantity)),
      limits: this.#rules.limits,
      rule: undefined,
      keep: undefined,
      over: () => this.#late,
    });
    const never = new Set([...without, ...this.#neverCut(unsure, exact)]);
    return pieces.filter((piece) => never.has(piece));
  }

  /** Pieces that no pattern holds: one that is worth more than all others together would be in the best. */
  #neverCut(unsure: readonly number[], pricer: PatternPricer): readonly number[] {
    const { pieces } = this.#problem;
    const most = (pieces.reduce((sum, { quantity }) => sum + quantity, 0) + 1) * pieces.length;
    const price = (sought: ReadonlySet<number>) => {
      this.#pricings++;
      return pricer.price(
        pieces.map((_, i) => (sought.has(i) ? most : 1)),
        0,
      );
    };
    const left = new Set(unsure);
    while (left.size > 0) {
      if (this.#late) return [];
      const { worth, patterns } = price(left);
      if (worth.every((each) => each < most)) break;
      const found = worth
        .flatMap((_, box) => patterns(box))
        .flatMap(({ pattern }) => pattern.counts)
        .filter(([piece]) => left.has(piece));
      // Where the worth is but a bound, what can be cut is not always known.
      if (found.length === 0) {
        return [...left].filter(
          (piece) => !this.#late && price(new Set([piece])).worth.every((each) => each < most),
        );
      }
      for (const [piece] of found) left.delete(piece);
    }
    return [...left];
  }

  get #late(): boolean {
    return this.#pricings >= PRICED_ANYWAY && this.#over();
  }
}

/** Whether a piece in the corner of some stock can be cut free in two stages. */
function fitsAlone(piece: number, classes: readonly StockClass[], rules: CuttingRules): boolean {
  return classes.some(({ box }) =>
    box.lays
      .filter((lay) => lay.piece === piece)
      .some((lay) =>
        box.firstCuts.some((cuts) => {
          const straight = cuts === 'along';
          const part: Part = {
            kind: 'split',
            cuts,
            parts: [
              {
                extent: straight ? lay.width : lay.length,
                part: {
                  kind: 'split',
                  cuts: straight ? 'across' : 'along',
                  parts: [
                    {
                      extent: straight ? lay.length : lay.width,
                      part: { kind: 'lay', piece, turned: lay.turned },
                    },
                  ],
                },
              },
            ],
          };
          return legal(part, box, rules);
        }),
      ),
  );
}

function atLeastOne(stock: Stock): Stock {
  return stock.kind === 'offcut' ? stock : { ...stock, onHand: Math.max(1, stock.onHand) };
}

function largestStock({ stock }: CuttingProblem): string {
  const [largest] = [...stock].sort((a, b) => b.length * b.width - a.length * a.width);
  return largest.id;
}
