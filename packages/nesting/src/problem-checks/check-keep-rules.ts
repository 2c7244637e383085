import type { CuttingProblem, KeepRule, Stock } from '../problem.js';
import { ProblemError } from '../problem-error.js';
import { checkMetal, metalKey } from './check-metal.js';
import { checkWhole, checkWholeIfAny } from './check-value.js';
import { DEAREST, LONGEST, MOST } from './limits.js';

/**
 * Refuses rules for keeping offcuts that make no sense, or by which a shop would
 * gain by cutting up sheets: a whole sheet that can be bought may not be worth
 * more than its price, nor stock more than it stands for in the books.
 * @throws ProblemError
 */
export function checkKeepRules({ keep = [], stock }: CuttingProblem): void {
  const rules = new Map<string, number>();
  keep.forEach((rule, i) => {
    const path = `keep[${i}]`;
    checkMetal(rule, path);
    checkWhole(rule.leastLength, 1, LONGEST, `${path}.leastLength`);
    checkWhole(rule.leastWidth, 1, LONGEST, `${path}.leastWidth`);
    checkWhole(rule.coinsPerMillion, 0, DEAREST, `${path}.coinsPerMillion`);
    checkWholeIfAny(rule.millions, 1, MOST, `${path}.millions`);
    checkWholeIfAny(rule.trouble, 0, DEAREST, `${path}.trouble`);
    const first = rules.get(metalKey(rule));
    if (first !== undefined) {
      const message = `is for the same metal and thickness as keep[${first}]; one rule is enough`;
      throw new ProblemError('two rules for one metal', path, message, rule);
    }
    rules.set(metalKey(rule), i);
  });
  stock.forEach((entry, i) => {
    const rule = rules.get(metalKey(entry));
    if (rule !== undefined) checkWorth(entry, i, keep[rule], rule);
  });
}

function checkWorth(stock: Stock, at: number, rule: KeepRule, ruleAt: number): void {
  const rate = `keep[${ruleAt}].coinsPerMillion`;
  const product = stock.length * stock.width * rule.coinsPerMillion;
  if (product > Number.MAX_SAFE_INTEGER) {
    const most = Math.floor(Number.MAX_SAFE_INTEGER / (stock.length * stock.width));
    const message = `must be at most ${most} for the area of '${stock.id}'; got ${rule.coinsPerMillion}`;
    throw new ProblemError('too large to compute exactly', rate, message, rule.coinsPerMillion);
  }
  const worth = wholeValue(stock, rule);
  if (stock.kind === 'sheet' && stock.canBuy !== 0 && worth > stock.price) {
    const message = `makes a whole '${stock.id}' worth ${worth}, above its price of ${stock.price}`;
    throw new ProblemError('rule above price', rate, message, rule.coinsPerMillion);
  }
  const { bookValue } = stock;
  if (bookValue === undefined || bookValue >= worth) return;
  const message = `must be at least ${worth}, which keep[${ruleAt}] gives for a whole one; got ${bookValue}`;
  throw new ProblemError('book value below rule', `stock[${at}].bookValue`, message, bookValue);
}

function wholeValue({ length, width }: Stock, rule: KeepRule): number {
  const fits =
    Math.max(length, width) >= rule.leastLength && Math.min(length, width) >= rule.leastWidth;
  if (!fits) return 0;
  const millionths = length * width * rule.coinsPerMillion;
  const ticks = 1_000_000 * (rule.millions ?? 1);
  const coins = (millionths - (millionths % ticks)) / ticks;
  return Math.max(0, coins - (rule.trouble ?? 0));
}
