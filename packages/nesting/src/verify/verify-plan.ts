import type { CuttingPlan, Layout } from '../plan.js';
import type { CuttingProblem, Piece, Stock } from '../problem.js';
import type { PlanFault } from './plan-fault.js';
import { replayCuts } from './replay-cuts.js';

/**
 * Checks a plan against its problem, by means of its own: it shares no code with
 * the planner. Every cut is replayed, every piece measured and counted, every
 * sheet counted and paid.
 * @returns everything that does not hold; empty for a good plan
 */
export function verifyPlan(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault[] {
  const faults: PlanFault[] = [];
  const stock = new Map(problem.stock.map((item) => [item.id, item]));
  const pieces = new Map(problem.pieces.map((item) => [item.id, item]));
  plan.layouts.forEach((layout, index) => {
    const from = stock.get(layout.stock);
    if (from === undefined) {
      const message = `'${layout.stock}' is no stock of this problem`;
      faults.push({ code: 'unknown stock', message, layout: index });
      return;
    }
    const found = wholeNumberFaults(layout);
    if (found.length === 0) found.push(...pieceFaults(layout, pieces));
    found.push(...replayCuts(layout, from, problem.shear));
    faults.push(...found.map((fault) => ({ ...fault, layout: index })));
  });
  return [
    ...faults,
    ...demandFaults(problem, plan),
    ...stockFaults(problem, plan),
    ...moneyFaults(problem, plan),
  ];
}

function wholeNumberFaults(layout: Layout): Omit<PlanFault, 'layout'>[] {
  const faults: Omit<PlanFault, 'layout'>[] = [];
  if (!Number.isInteger(layout.count) || layout.count < 1) {
    const message = `count must be a whole number of at least 1; got ${layout.count}`;
    faults.push({ code: 'not a whole number', message });
  }
  for (const { x, y, length, width } of [...layout.pieces, ...layout.remnants]) {
    const whole = [x, y, length, width].every(Number.isInteger);
    if (whole && x >= 0 && y >= 0 && length > 0 && width > 0) continue;
    const message = `${length} x ${width} at (${x}, ${y}) is no rectangle of whole ticks`;
    faults.push({ code: 'not a whole number', message });
  }
  return faults;
}

function pieceFaults(
  layout: Layout,
  pieces: ReadonlyMap<string, Piece>,
): Omit<PlanFault, 'layout'>[] {
  return layout.pieces.flatMap((placed): Omit<PlanFault, 'layout'>[] => {
    const piece = pieces.get(placed.piece);
    if (piece === undefined) {
      return [{ code: 'unknown piece', message: `'${placed.piece}' is no piece of this problem` }];
    }
    const [length, width] = placed.turned
      ? [piece.width, piece.length]
      : [piece.length, piece.width];
    const faults: Omit<PlanFault, 'layout'>[] = [];
    if (placed.length !== length || placed.width !== width) {
      const message = `'${piece.id}' is ${length} x ${width} as it lies; drawn ${placed.length} x ${placed.width}`;
      faults.push({ code: 'wrong size', message });
    }
    if (placed.turned && !piece.mayTurn) {
      faults.push({ code: 'must not turn', message: `'${piece.id}' lies turned and must not` });
    }
    return faults;
  });
}

function demandFaults(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault[] {
  const made = new Map<string, number>();
  for (const layout of plan.layouts) {
    for (const { piece } of layout.pieces) {
      made.set(piece, (made.get(piece) ?? 0) + layout.count);
    }
  }
  return problem.pieces.flatMap((piece): PlanFault[] => {
    const count = made.get(piece.id) ?? 0;
    if (count === piece.quantity) return [];
    const message = `'${piece.id}' is wanted ${piece.quantity} times and cut ${count} times`;
    return [{ code: 'demand not met exactly', message }];
  });
}

function stockFaults(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault[] {
  return problem.stock.flatMap((stock): PlanFault[] => {
    const used = plan.layouts
      .filter((layout) => layout.stock === stock.id)
      .reduce((sum, layout) => sum + layout.count, 0);
    const onHand = stock.kind === 'offcut' ? 1 : stock.onHand;
    const most = onHand + buyable(stock);
    const faults: PlanFault[] = [];
    if (used > most) {
      const message = `'${stock.id}' is used ${used} times; there are at most ${most}`;
      faults.push({ code: 'more stock than there is', message });
    }
    const listed = plan.buy.filter((purchase) => purchase.stock === stock.id);
    const bought = listed.reduce((sum, purchase) => sum + purchase.count, 0);
    const needed = Math.max(0, used - onHand);
    const price = stock.kind === 'offcut' ? 0 : stock.price;
    const paid = listed.reduce((sum, purchase) => sum + purchase.cost, 0);
    if (bought !== needed || paid !== needed * price) {
      const message = `'${stock.id}': ${needed} to buy for ${needed * price}; listed ${bought} for ${paid}`;
      faults.push({ code: 'wrong purchase', message });
    }
    return faults;
  });
}

function buyable(stock: Stock): number {
  if (stock.kind === 'offcut') return 0;
  return stock.canBuy === 'any' ? Number.POSITIVE_INFINITY : stock.canBuy;
}

function moneyFaults(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault[] {
  const faults: PlanFault[] = plan.buy
    .filter((purchase) => problem.stock.every((stock) => stock.id !== purchase.stock))
    .map(({ stock }) => ({
      code: 'wrong purchase',
      message: `'${stock}' is to be bought, but is no stock of this problem`,
    }));
  const total = plan.buy.reduce((sum, purchase) => sum + purchase.cost, 0);
  if (total !== plan.cost) {
    const message = `purchases come to ${total}, the plan says ${plan.cost}`;
    faults.push({ code: 'wrong cost', message });
  }
  const { cost, proven } = plan.bound;
  if (!(cost >= 0 && cost <= plan.cost) || proven !== (cost === plan.cost)) {
    const claim = proven ? 'proven' : 'not proven';
    const message = `a bound of ${cost} (${claim}) cannot stand beside a cost of ${plan.cost}`;
    faults.push({ code: 'bound contradicts cost', message });
  }
  return faults;
}
