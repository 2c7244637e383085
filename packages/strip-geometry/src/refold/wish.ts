import { SquaresSum } from './least-squares.js';

/** That `off`, which changes by `row . change` with the unknowns, should be 0. */
export interface Wish {
  /** By unknown. */
  readonly row: Float64Array;
  readonly off: number;
  readonly weight: number;
}

/** The change of the unknowns by which the weighted sum of the squares of what is off is least. */
export function changeFor(wishes: readonly Wish[], size: number): Float64Array {
  const sum = new SquaresSum(size);
  for (const { row, off, weight } of wishes) {
    sum.add(row, -off, weight);
  }
  return sum.least();
}

/**
 * Nearly the least sum with whole unknowns from `whole` on. `now` are the
 * unknowns as they are; the answer is what they should be, not the change.
 */
export function wholeFor(wishes: readonly Wish[], now: Float64Array, whole: number): Float64Array {
  const sum = new SquaresSum(now.length);
  for (const { row, off, weight } of wishes) {
    const at = row.reduce((total, entry, index) => total + entry * (now[index] ?? 0), 0);
    sum.add(row, at - off, weight);
  }
  return sum.least(whole);
}
