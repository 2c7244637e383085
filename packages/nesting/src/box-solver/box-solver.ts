import type { Part } from '../pattern/part.js';

/** Finds what one box is worth, for one value after another. */
export interface BoxSolver {
  /**
   * @param values one for each piece, at least 0
   * @param coin what a coin of kept remnants is worth in the same unit
   * @returns a worth that no pattern exceeds
   */
  solve(values: ArrayLike<number>, coin: number): number;
  /** How to cut it for the worth last solved, or nothing where no piece is worth cutting. */
  part(): Part | undefined;
  /**
   * The pieces that make up the worth, in a part that need not fit, where `part` may be worth less; absent
   * where it never is.
   */
  loosePart?(): Part | undefined;
}

/** The pieces that make up the worth last solved, in a part that need not fit. */
export function loosePartOf(solver: BoxSolver): Part | undefined {
  return solver.loosePart === undefined ? solver.part() : solver.loosePart();
}
