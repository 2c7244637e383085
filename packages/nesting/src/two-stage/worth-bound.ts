import type { Box } from '../pattern/box.js';
import { keptUnrounded } from '../pattern/kept-value.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule } from '../problem.js';
import { knownFaces } from './known-faces.js';
import { StripBound } from './strip-bound.js';
import type { Face, StripFamily } from './strip-family.js';

/** Outweighs the rounding of sums. */
const ROUNDING = 1e-9;
/** How often the widths of the best filling are looked at more closely. */
const MOST_ROUNDS = 60;

/**
 * What two-stage patterns are worth at most where remnants have a value, closely: strips of
 * every width side by side, each worth what `StripBound` says, and a rest beside them.
 * Slivers and the reach of the shear are disregarded, which only relaxes it.
 */
export class WorthBound {
  readonly #boxes: readonly Box[];
  readonly #families: readonly StripFamily[];
  readonly #faces: readonly Face[];
  readonly #strips: readonly StripBound[];
  readonly #kerf: number;
  readonly #rule: KeepRule;
  /** Steps of putting strips side by side. */
  #sideSteps = 0;

  /** @param demand copies of each piece that are of use */
  constructor(boxes: readonly Box[], demand: readonly number[], limits: Limits, rule: KeepRule) {
    const { families, faces } = knownFaces(boxes, limits, 'few');
    this.#boxes = boxes;
    this.#families = families;
    this.#faces = faces;
    this.#kerf = limits.kerf;
    this.#rule = rule;
    this.#strips = families.map((family, index) => {
      const breadth = Math.max(
        0,
        ...faces.filter((face) => face.family === index).map((face) => face.breadth),
      );
      return new StripBound(family, breadth, demand, limits.kerf, rule);
    });
  }

  /** Steps that it took so far. */
  get #steps(): number {
    return this.#strips.reduce((sum, { steps }) => sum + steps, this.#sideSteps);
  }

  /**
   * @param values one for each piece, at least 0
   * @param coin what a coin of kept remnants is worth in the same unit
   * @param mostSteps of filling strips and putting them side by side, after which it gives up
   * @returns for each box, a worth that no pattern exceeds, 0 where nothing is worth cutting;
   *   undefined where it gave up
   */
  worth(values: ArrayLike<number>, coin: number, mostSteps: number): readonly number[] | undefined {
    const last = this.#steps + mostSteps;
    for (const strips of this.#strips) {
      if (!strips.solve(values, coin, last - this.#steps)) return undefined;
    }
    const worth: number[] = this.#boxes.map(() => 0);
    for (const face of this.#faces) {
      const most = this.#closely(face, coin, last);
      if (most === undefined) return undefined;
      worth[face.box] = Math.max(worth[face.box], Math.ceil(most * (1 + ROUNDING)));
    }
    return worth;
  }

  /**
   * The most that a face is worth, once strips as wide as those of the best filling are known exactly.
   * @param last step, after which it is left as it is
   * @returns undefined where there are not steps enough for a first worth
   */
  #closely(face: Face, coin: number, last: number): number | undefined {
    const strips = this.#strips[face.family];
    let placed = this.#sideBySide(face, coin, last);
    if (placed === undefined) return undefined;
    let { most, widths } = placed;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const refined = [...widths].filter((width) => strips.refine(width));
      if (refined.length === 0) break;
      placed = this.#sideBySide(face, coin, last);
      if (placed === undefined) break;
      ({ most, widths } = placed);
    }
    return most;
  }

  /**
   * The most that strips and a rest are worth, and how wide the strips are; undefined where it would take
   * steps beyond the last.
   */
  #sideBySide(
    { breadth, family }: Face,
    coin: number,
    lastStep: number,
  ): { most: number; widths: Set<number> } | undefined {
    const { length } = this.#families[family];
    const strips = this.#strips[family];
    const sizes = risingWidths(strips, breadth);
    if (this.#steps + breadth * sizes.length > lastStep) return undefined;
    this.#sideSteps += breadth * sizes.length;
    const worths = Float64Array.from(sizes, (width) => strips.worth(width));
    const filled = new Float64Array(breadth + 1).fill(Number.NEGATIVE_INFINITY);
    const last = new Int32Array(breadth + 1);
    filled[0] = 0;
    let most = 0;
    let at = 0;
    for (let room = 1; room <= breadth; room++) {
      let best = Number.NEGATIVE_INFINITY;
      for (let i = 0; i < sizes.length && sizes[i] <= room; i++) {
        const worth = filled[room - sizes[i]] + worths[i];
        if (worth <= best) continue;
        best = worth;
        last[room] = sizes[i];
      }
      filled[room] = best;
      const rest = keptUnrounded(length - this.#kerf, breadth - room - this.#kerf, this.#rule);
      if (best + coin * rest <= most) continue;
      most = best + coin * rest;
      at = room;
    }
    const widths = new Set<number>();
    for (; at > 0; at -= last[at]) widths.add(last[at]);
    return { most, widths };
  }
}

/** Widths of which a strip may be worth more than any narrower one; ascending. */
function risingWidths(strips: StripBound, breadth: number): readonly number[] {
  const widths: number[] = [];
  let before = 0;
  for (let width = 1; width <= breadth; width++) {
    const worth = strips.worth(width);
    if (worth <= before) continue;
    before = worth;
    widths.push(width);
  }
  return widths;
}
