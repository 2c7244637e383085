import type { CuttingProblem, Metal } from './problem.js';

/** Coins that a rectangle of a metal is worth in the rack, by the rule for keeping offcuts. */
export function keepValue(
  problem: CuttingProblem,
  { metal, thickness }: Metal,
  length: number,
  width: number,
): number {
  const rule = problem.keep?.find(
    (entry) => entry.metal === metal && entry.thickness === thickness,
  );
  if (rule === undefined) return 0;
  const [short, long] = length < width ? [length, width] : [width, length];
  if (long < rule.leastLength || short < rule.leastWidth) return 0;
  const byArea = Math.floor(
    (length * width * rule.coinsPerMillion) / (1_000_000 * (rule.millions ?? 1)),
  );
  return Math.max(0, byArea - (rule.trouble ?? 0));
}
