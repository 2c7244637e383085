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

/**
 * What cannot be cut from any of the stock, however it is cut.
 * @returns undefined where every piece that is wanted fits somewhere
 */
export function misfits(
  problem: CuttingProblem,
  classes: readonly StockClass[],
  rules: CuttingRules,
): Misfit | undefined {
  const short = unfitting(problem, classes, rules);
  if (short.length === 0) return undefined;
  // There may be none of the stock that they fit.
  const listed = { ...problem, stock: problem.stock.map(atLeastOne) };
  const unfit = unfitting(
    listed,
    stockClasses(listed, rules.limits, () => 0),
    rules,
  );
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
  const reach = stockClasses(listed, unlimited.limits, () => 0);
  const still = new Set(unfitting(listed, reach, unlimited));
  return {
    status: 'piece too large',
    pieces: unfit.map(id),
    largestStock: largestStock(problem),
    forTheShear: unfit.filter((i) => !still.has(i)).map(id),
  };
}

function unfitting(
  problem: CuttingProblem,
  classes: readonly StockClass[],
  rules: CuttingRules,
): readonly number[] {
  const wanted = problem.pieces.flatMap((piece, i) => (piece.quantity > 0 ? [i] : []));
  const unsure = wanted.filter((piece) => !fitsAlone(piece, classes, rules));
  if (unsure.length === 0 || classes.length === 0) return unsure;
  // A piece that cannot be cut alone may still be cut beside others, or in more stages.
  const { exact } = kindPricers(rules.stages, {
    boxes: classes.map(({ box }) => box),
    demand: problem.pieces.map((piece) => Math.max(1, piece.quantity)),
    limits: rules.limits,
    rule: undefined,
    keep: undefined,
  });
  return neverCut(unsure, problem, exact);
}

/** Pieces that no pattern holds: one that is worth more than all others together would be in the best. */
function neverCut(
  unsure: readonly number[],
  { pieces }: CuttingProblem,
  pricer: PatternPricer,
): readonly number[] {
  const most = (pieces.reduce((sum, { quantity }) => sum + quantity, 0) + 1) * pieces.length;
  const price = (sought: ReadonlySet<number>) =>
    pricer.price(
      pieces.map((_, i) => (sought.has(i) ? most : 1)),
      0,
    );
  const left = new Set(unsure);
  while (left.size > 0) {
    const { worth, patterns } = price(left);
    if (worth.every((each) => each < most)) break;
    const found = worth
      .flatMap((_, box) => patterns(box))
      .flatMap(({ pattern }) => pattern.counts)
      .filter(([piece]) => left.has(piece));
    // Where the worth is but a bound, what can be cut is not always known.
    if (found.length === 0) {
      return [...left].filter((piece) =>
        price(new Set([piece])).worth.every((each) => each < most),
      );
    }
    for (const [piece] of found) left.delete(piece);
  }
  return [...left];
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
