import type { Box } from '../pattern/box.js';
import { coinsPerTick } from '../pattern/kept-value.js';
import type { Limits } from '../pattern/limits.js';
import type { Part, Pattern } from '../pattern/part.js';
import type { PatternPricer, PricedPatterns } from '../pattern/pattern-pricer.js';
import { countsOf } from '../pattern/walk-part.js';
import type { KeepRule } from '../problem.js';
import { type BoxSolver, loosePartOf } from './box-solver.js';
import { ROUNDING } from './rounding.js';
import { worthByArea } from './worth-by-area.js';

/**
 * Prices patterns as if all metal beside their pieces were one remnant that is kept, whatever its
 * shape, or else scrap: no pattern is worth more, and hardly less where remnants are few and large. That
 * takes the time of pieces alone, while remnants as the cuts leave them take far more.
 *
 * Its patterns cannot be cut as they are, so that they are of use for bounds only. Each is one band over the whole
 * box, since what is kept of it is known of all its pieces together.
 */
export class RoughPricer implements PatternPricer {
  readonly #boxes: readonly Box[];
  readonly #limits: Limits;
  readonly #rule: KeepRule;
  readonly #solverFor: (box: Box) => BoxSolver;
  readonly #over: () => boolean;
  /** Net square ticks of each piece. */
  readonly #areas: ReadonlyMap<number, number>;
  /** By box, as far as they were needed so far. */
  readonly #solvers: (BoxSolver | undefined)[] = [];

  /**
   * @param solverFor makes a solver of pieces alone
   * @param over asked before each box is looked at; those after are worth no more than by their area
   */
  constructor(
    boxes: readonly Box[],
    limits: Limits,
    rule: KeepRule,
    solverFor: (box: Box) => BoxSolver,
    over: () => boolean,
  ) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#rule = rule;
    this.#solverFor = solverFor;
    this.#over = over;
    this.#areas = new Map(
      boxes.flatMap(({ lays }) => lays).map((lay) => [lay.piece, this.#net(lay.length, lay.width)]),
    );
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const best = this.#boxes.map((box, index) => {
      if (!this.#over()) return this.#best(box, index, values, coin);
      return { worth: worthByArea(box, values, this.#rule, coin), part: undefined };
    });
    return {
      worth: best.map(({ worth }) => worth),
      patterns: (index) => {
        const { worth, part } = best[index];
        if (part === undefined) return [];
        return [{ pattern: this.whole(index, part), worth }];
      },
    };
  }

  /** Coins that remnants beside the pieces of a rectangle of gross ticks are worth at most, not rounded down. */
  keptBeside(part: Part, length: number, width: number): number {
    let area = this.#net(length, width);
    for (const [piece, copies] of countsOf(part)) area -= copies * (this.#areas.get(piece) ?? 0);
    return Math.max(0, area * coinsPerTick(this.#rule) - (this.#rule.trouble ?? 0));
  }

  #best(box: Box, index: number, values: ArrayLike<number>, coin: number) {
    const solver = this.#solvers[index] ?? this.#solverFor(box);
    this.#solvers[index] = solver;
    const perTick = coin * coinsPerTick(this.#rule);
    const kept = this.#net(box.length, box.width) * perTick - coin * (this.#rule.trouble ?? 0);
    const bare = { worth: solver.solve(values, 0), part: loosePartOf(solver) };
    if (kept <= 0) return bare;
    // A piece is worth its value less that of its metal, on top of the whole box.
    const less = Float64Array.from(values);
    for (const [piece, area] of this.#areas) {
      less[piece] = Math.max(0, less[piece] - area * perTick);
    }
    const credited = (solver.solve(less, 0) + kept) * (1 + ROUNDING);
    return credited > bare.worth ? { worth: credited, part: loosePartOf(solver) } : bare;
  }

  /** A whole box with these pieces on it: one band, and beside them what could be kept. */
  whole(stockClass: number, inner: Part): Pattern {
    const box = this.#boxes[stockClass];
    const [cuts] = box.firstCuts;
    const extent = cuts === 'along' ? box.width : box.length;
    const kept = this.keptBeside(inner, box.length, box.width);
    const part: Part = { kind: 'split', cuts, parts: [{ extent, part: inner }] };
    return { stockClass, part, counts: countsOf(inner), kept };
  }

  #net(length: number, width: number): number {
    const { kerf } = this.#limits;
    return (length - kerf) * (width - kerf);
  }
}
