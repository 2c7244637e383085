import type { CuttingPlan } from '../plan.js';
import type { CuttingProblem, Stock } from '../problem.js';
import type { PlanFault } from './plan-fault.js';
import { inTheRack, ruleFor } from './rack-value.js';

/** What a plan takes of one stock, counted and priced anew. */
interface Taken {
  readonly stock: Stock;
  readonly used: number;
  readonly most: number;
  readonly bought: number;
  readonly price: number;
  readonly fromShop: number;
  /** Coins for the sheets of a pack that are left over. */
  readonly kept: number;
}

/** Stock that is not there, purchases that are wrong, and a cost or a bound that is. */
export function moneyFaults(problem: CuttingProblem, plan: CuttingPlan): readonly PlanFault[] {
  const used = new Map<string, number>();
  let kept = 0;
  for (const layout of plan.layouts) {
    used.set(layout.stock, (used.get(layout.stock) ?? 0) + layout.count);
    const values = layout.remnants.reduce((sum, remnant) => sum + remnant.value, 0);
    kept += layout.count * values;
  }
  const taken = problem.stock.map((stock) => taking(problem, stock, used.get(stock.id) ?? 0));
  const sum = (of: (entry: Taken) => number) => taken.reduce((all, entry) => all + of(entry), 0);
  const parts = {
    bought: sum((entry) => entry.bought * entry.price),
    fromShop: sum((entry) => entry.fromShop),
    kept: kept + sum((entry) => entry.kept),
  };
  return [
    ...taken.flatMap(tooMuch),
    ...purchaseFaults(taken, plan),
    ...costFaults(parts, plan),
    ...boundFaults(plan),
  ];
}

/** What is on hand goes first; whole packs are bought for the rest. */
function taking(problem: CuttingProblem, stock: Stock, used: number): Taken {
  const whole = inTheRack(ruleFor(problem.keep, stock), stock.length, stock.width).value;
  const book = stock.bookValue ?? whole;
  if (stock.kind === 'offcut') {
    const fromShop = Math.min(used, 1) * book;
    return { stock, used, most: 1, bought: 0, price: 0, fromShop, kept: 0 };
  }
  const pack = stock.packSize ?? 1;
  const needed = Math.max(0, used - stock.onHand);
  const bought = Math.ceil(needed / pack) * pack;
  return {
    stock,
    used,
    most: stock.onHand + (stock.canBuy === 'any' ? Number.POSITIVE_INFINITY : stock.canBuy),
    bought,
    price: stock.price,
    fromShop: Math.min(used, stock.onHand) * book,
    kept: (bought - needed) * whole,
  };
}

function tooMuch({ stock, used, bought, most }: Taken): readonly PlanFault[] {
  const onHand = stock.kind === 'sheet' ? stock.onHand : 1;
  if (used <= most && bought <= most - onHand) return [];
  const packs = bought > most - onHand && used <= most ? ' in whole packs' : '';
  const message = `'${stock.id}' is used ${used} times; there are at most ${most}${packs}`;
  return [{ code: 'more stock than there is', message }];
}

function purchaseFaults(taken: readonly Taken[], plan: CuttingPlan): readonly PlanFault[] {
  const faults: PlanFault[] = [];
  const wrong = (message: string) => faults.push({ code: 'wrong purchase', message });
  const listed = new Map<string, { count: number; cost: number }>();
  for (const { stock, count, cost } of plan.buy) {
    if (listed.has(stock)) wrong(`'${stock}' is listed twice`);
    if (!(count >= 1)) wrong(`'${stock}' is listed ${count} times; at least 1 would be right`);
    const before = listed.get(stock) ?? { count: 0, cost: 0 };
    listed.set(stock, { count: before.count + count, cost: before.cost + cost });
  }
  for (const { stock, bought, price } of taken) {
    const { count, cost } = listed.get(stock.id) ?? { count: 0, cost: 0 };
    listed.delete(stock.id);
    if (count === bought && cost === bought * price) continue;
    wrong(`'${stock.id}': ${bought} to buy for ${bought * price}; listed ${count} for ${cost}`);
  }
  for (const [stock, { count }] of listed) {
    wrong(`${count} of '${stock}' are to be bought, but it is no stock of this problem`);
  }
  return faults;
}

function costFaults(parts: CuttingPlan['parts'], plan: CuttingPlan): readonly PlanFault[] {
  const faults: PlanFault[] = [];
  const compare = (name: string, right: number, found: number) => {
    if (right === found) return;
    const message = `${name} comes to ${right}, the plan says ${found}`;
    faults.push({ code: 'wrong cost', message });
  };
  compare('the money for bought sheets', parts.bought, plan.parts.bought);
  compare('the book value of what is used', parts.fromShop, plan.parts.fromShop);
  compare('the value of what is kept', parts.kept, plan.parts.kept);
  compare('the cost', parts.bought + parts.fromShop - parts.kept, plan.cost);
  return faults;
}

function boundFaults(plan: CuttingPlan): readonly PlanFault[] {
  const { cost, proven } = plan.bound;
  if (Number.isInteger(cost) && cost >= 0 && cost <= plan.cost && proven === (cost === plan.cost)) {
    return [];
  }
  const claim = proven ? 'proven' : 'not proven';
  const message = `a bound of ${cost} (${claim}) cannot stand beside a cost of ${plan.cost}`;
  return [{ code: 'bound contradicts cost', message }];
}
