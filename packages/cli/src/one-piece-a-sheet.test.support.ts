import {
  type CuttingPlan,
  type CuttingProblem,
  type Layout,
  type Piece,
  type PlanOutcome,
  type Sheet,
  type Stock,
  verifyPlan,
} from '@stripwright/nesting';
import type { Planner } from './environment.js';

/**
 * The most wasteful planner there is: every piece gets a sheet of its own. Its
 * plans are good, its bound is honest and weak, and it takes no time, whatever
 * the quantities.
 */
export const onePieceASheet: Planner = {
  planCutting: async (problem) => planOf(problem),
  verifyPlan,
};

function planOf(problem: CuttingProblem): PlanOutcome {
  const sheets = problem.stock.filter((stock) => stock.kind === 'sheet');
  const left = new Map(sheets.map((sheet) => [sheet.id, supply(sheet)]));
  const layouts: Layout[] = [];
  const tooLarge = problem.pieces.filter((piece) =>
    problem.stock.every((stock) => layoutOn(stock, piece, problem) === undefined),
  );
  if (tooLarge.length > 0) {
    return {
      status: 'piece too large',
      pieces: tooLarge.map(({ id }) => id),
      largestStock: largest(problem.stock),
      forTheShear: tooLarge
        .filter((piece) =>
          problem.stock.some((stock) => layoutOn(stock, piece, withoutReach(problem))),
        )
        .map(({ id }) => id),
    };
  }
  for (const piece of problem.pieces) {
    let wanted = piece.quantity;
    for (const sheet of sheets) {
      const layout = layoutOn(sheet, piece, problem);
      const count = Math.min(wanted, left.get(sheet.id) ?? 0);
      if (layout === undefined || count === 0) continue;
      left.set(sheet.id, (left.get(sheet.id) ?? 0) - count);
      layouts.push({ ...layout, count });
      wanted -= count;
    }
    if (wanted > 0) return { status: 'not enough stock' };
  }
  return { status: 'planned', plan: priced(layouts, sheets) };
}

const supply = ({ onHand, canBuy }: Sheet) =>
  canBuy === 'any' ? Number.POSITIVE_INFINITY : onHand + canBuy;

const withoutReach = ({ shear, ...problem }: CuttingProblem): CuttingProblem => ({
  ...problem,
  shear: { firstCut: shear.firstCut },
});

const largest = (stock: readonly Stock[]) =>
  [...stock].sort((one, other) => other.length * other.width - one.length * one.width)[0]?.id ?? '';

/** The piece in the lower left corner, as it is or turned, if the sheet and the shear allow it. */
function layoutOn(stock: Stock, piece: Piece, { shear, keep }: CuttingProblem): Layout | undefined {
  const across = shear.firstCut === 'across';
  for (const turned of piece.mayTurn ? [false, true] : [false]) {
    const length = turned ? piece.width : piece.length;
    const width = turned ? piece.length : piece.width;
    if (length > stock.length || width > stock.width) continue;
    const cuts = across
      ? [
          { stage: 1, x1: length, y1: 0, x2: length, y2: stock.width },
          { stage: 2, x1: 0, y1: width, x2: length, y2: width },
        ]
      : [
          { stage: 1, x1: 0, y1: width, x2: stock.length, y2: width },
          { stage: 2, x1: length, y1: 0, x2: length, y2: width },
        ];
    const rest = across
      ? [
          { x: length, y: 0, length: stock.length - length, width: stock.width },
          { x: 0, y: width, length, width: stock.width - width },
        ]
      : [
          { x: 0, y: width, length: stock.length, width: stock.width - width },
          { x: length, y: 0, length: stock.length - length, width },
        ];
    const made = cuts.filter(
      ({ x1, x2, y1, y2 }) =>
        !(x1 === x2 && x1 === stock.length) && !(y1 === y2 && y1 === stock.width),
    );
    const longest = Math.max(0, ...made.map(({ x1, x2, y1, y2 }) => x2 - x1 + y2 - y1));
    if (longest > (shear.longestCut ?? Number.POSITIVE_INFINITY)) continue;
    return {
      stock: stock.id,
      count: 1,
      pieces: [{ piece: piece.id, x: 0, y: 0, length, width, turned }],
      cuts: made.map((cut) => ({ ...cut, stage: cut.stage === 1 ? 1 : 2 })),
      remnants: rest
        .filter((remnant) => remnant.length > 0 && remnant.width > 0)
        .map((remnant) => ({ ...remnant, keep: isKept(remnant, keep), value: 0 })),
    };
  }
  return undefined;
}

/** By a rule that gives kept offcuts no worth. */
function isKept(
  remnant: { readonly length: number; readonly width: number },
  keep: CuttingProblem['keep'],
) {
  const [rule] = keep ?? [];
  if (rule === undefined) return false;
  const { length, width } = remnant;
  const long = Math.max(length, width) >= rule.leastLength;
  return long && Math.min(length, width) >= rule.leastWidth;
}

function priced(layouts: readonly Layout[], sheets: readonly Sheet[]): CuttingPlan {
  const buy = sheets.flatMap(({ id, onHand, price }) => {
    const used = layouts.reduce((sum, layout) => sum + (layout.stock === id ? layout.count : 0), 0);
    const count = Math.max(0, used - onHand);
    return count === 0 ? [] : [{ stock: id, count, cost: count * price }];
  });
  const cost = buy.reduce((sum, purchase) => sum + purchase.cost, 0);
  return {
    layouts,
    buy,
    cost,
    parts: { bought: cost, fromShop: 0, kept: 0 },
    spares: [],
    bound: { cost: 0, proven: cost === 0 },
    effort: { rounds: 0, patterns: 0, integerMasters: 0, nodes: 0, ending: 'pattern limit' },
  };
}
