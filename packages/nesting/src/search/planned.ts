import type { Pattern } from '../pattern/part.js';

/** A pattern and how many sheets are cut by it. */
export interface Planned {
  readonly pattern: Pattern;
  /** At least 1. */
  readonly count: number;
}

/** How many sheets of each class are cut. */
export function sheetsUsed(planned: readonly Planned[], classes: number): readonly number[] {
  const used: number[] = new Array(classes).fill(0);
  for (const { pattern, count } of planned) used[pattern.stockClass] += count;
  return used;
}

/** Coins that the remnants of all sheets are worth. */
export function keptCoins(planned: readonly Planned[]): number {
  return planned.reduce((sum, { pattern, count }) => sum + pattern.kept * count, 0);
}

/** How many of each piece are still wanted once the sheets are cut; 0 where there are more than enough. */
export function demandLeft(
  demand: readonly number[],
  planned: readonly Planned[],
): readonly number[] {
  const left = [...demand];
  for (const { pattern, count } of planned) {
    for (const [piece, copies] of pattern.counts) left[piece] -= copies * count;
  }
  return left.map((quantity) => Math.max(0, quantity));
}
