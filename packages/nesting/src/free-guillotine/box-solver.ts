import type { Block } from '../pattern/block.js';

/** Finds what one box is worth, for one value after another. */
export interface BoxSolver {
  /**
   * @param values one for each piece, at least 0
   * @param coin what a coin of kept remnants is worth in the same unit
   * @returns a worth that no pattern exceeds
   */
  solve(values: ArrayLike<number>, coin: number): number;
  /** What to cut for the worth last solved, or nothing where no piece is worth cutting. */
  block(): Block | undefined;
}
