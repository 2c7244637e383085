import type { Box } from '../pattern/box.js';
import type { Part } from '../pattern/part.js';
import { type BoxSolver, loosePartOf } from './box-solver.js';

/** A box solved as if its width were its length. */
export class TurnedBox implements BoxSolver {
  readonly #solver: BoxSolver;

  /** @param solverFor solves the box seen from its side */
  constructor(box: Box, solverFor: (box: Box) => BoxSolver) {
    this.#solver = solverFor({
      length: box.width,
      width: box.length,
      firstCuts: box.firstCuts.map((cut) => (cut === 'along' ? 'across' : 'along')),
      lays: box.lays.map((lay) => ({ ...lay, length: lay.width, width: lay.length })),
    });
  }

  solve(values: ArrayLike<number>, coin: number): number {
    return this.#solver.solve(values, coin);
  }

  part(): Part | undefined {
    const part = this.#solver.part();
    return part === undefined ? undefined : turned(part);
  }

  loosePart(): Part | undefined {
    const part = loosePartOf(this.#solver);
    return part === undefined ? undefined : turned(part);
  }
}

function turned(part: Part): Part {
  if (part.kind === 'lay') return part;
  return {
    kind: 'split',
    cuts: part.cuts === 'along' ? 'across' : 'along',
    parts: part.parts.map(({ extent, part }) => ({ extent, part: turned(part) })),
  };
}
