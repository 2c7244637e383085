import { leastFirst } from './reduced-costs.js';

const EPSILON = 1e-6;

/**
 * Indices of all that a linear plan uses, and of those of least cost besides, not too
 * many of one group.
 * @param amounts in the linear plan
 * @param most in all
 * @param shareOfOne of them that may be of one group, those that are used aside
 */
export function leastOfEach(
  costs: readonly number[],
  amounts: readonly number[],
  most: number,
  shareOfOne: number,
  groupOf: (index: number) => number,
): readonly number[] {
  const used = (index: number) => (amounts[index] ?? 0) > EPSILON;
  const ranked = costs.map((cost, index) => (used(index) ? Number.NEGATIVE_INFINITY : cost));
  const taken = new Map<number, number>();
  const chosen = leastFirst(ranked, costs.length).filter((index) => {
    const group = groupOf(index);
    const before = taken.get(group) ?? 0;
    if (!used(index) && before >= most * shareOfOne) return false;
    taken.set(group, before + 1);
    return true;
  });
  return chosen.slice(0, most);
}
