import type { Part } from '../pattern/part.js';
import { type BoxSolver, loosePartOf } from './box-solver.js';

/** The best of several kinds of patterns of one box. */
export class BestOf implements BoxSolver {
  readonly #kinds: readonly BoxSolver[];
  #best: BoxSolver | undefined;

  constructor(kinds: readonly BoxSolver[]) {
    this.#kinds = kinds;
  }

  solve(values: ArrayLike<number>, coin: number): number {
    let most = 0;
    this.#best = undefined;
    for (const kind of this.#kinds) {
      const worth = kind.solve(values, coin);
      if (worth > most) {
        most = worth;
        this.#best = kind;
      }
    }
    return most;
  }

  part(): Part | undefined {
    return this.#best?.part();
  }

  loosePart(): Part | undefined {
    return this.#best && loosePartOf(this.#best);
  }
}
