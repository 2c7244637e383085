import type { Box, BoxLay } from '../pattern/box.js';
import type { CuttingRules } from '../pattern/cutting-rules.js';
import type { KeepValue } from '../pattern/keep-value.js';
import { mayRest } from '../pattern/limits.js';
import type { Rolling } from '../problem.js';
import type { Combinations } from './combinations.js';
import { Frontier } from './frontier.js';
import type { WayToCut, Yield } from './yield.js';

/** Thrown where there is more to try than is allowed; `everyPattern` catches it. */
export class TooMuch extends Error {}

/** What may still be spent, shared by the boxes of a problem. */
export interface Allowance {
  steps: number;
  /** Asked now and then; true ends it. */
  readonly over: () => boolean;
}

/** Steps that it takes to look a rectangle up. */
const TO_LOOK_UP = 4;

export interface EnumerationRequest {
  readonly box: Box;
  readonly rules: CuttingRules;
  readonly combinations: Combinations;
  /** Values remnants, in net ticks. */
  readonly keep: KeepValue;
  readonly left: Allowance;
}

/** What one direction of cutting makes of a rectangle. */
export interface Division {
  readonly runs: Rolling;
  /** Gross extents, square to the cuts. */
  readonly near: number;
  /** 0 where the kerf leaves nothing. */
  readonly far: number;
}

/**
 * What the enumerations of every kind of cutting share: the rectangles of one box
 * at every tick, each looked into once. Lengths are gross: see `pattern/part.ts`.
 */
export class Enumeration {
  readonly #request: EnumerationRequest;
  readonly #known = new Map<string, readonly Yield[]>();
  /** Of the lays that are wanted. */
  readonly lays: readonly BoxLay[];

  constructor(request: EnumerationRequest) {
    this.#request = request;
    this.lays = request.box.lays.filter(({ piece }) => request.combinations.one(piece) > 0);
  }

  /**
   * What a rectangle yields by these ways of cutting; the same for the same name.
   * @param look adds what it finds
   */
  once(
    name: string,
    length: number,
    width: number,
    look: (frontier: Frontier) => void,
  ): readonly Yield[] {
    const known = this.#known.get(name);
    if (known !== undefined) return known;
    const { combinations } = this.#request;
    if (this.#request.left.over()) throw new TooMuch();
    let found = [this.uncut(length, width)];
    // What no piece fits is not worth a cut: one remnant is worth no less than several.
    if (this.lays.some((lay) => lay.length <= length && lay.width <= width)) {
      this.#take(combinations.size);
      const frontier = new Frontier(combinations);
      for (const { pieces, kept, way } of found) frontier.add(pieces, kept, way);
      look(frontier);
      found = [...frontier.best()];
    }
    this.#known.set(name, found);
    return found;
  }

  /** The rectangle as a remnant. */
  uncut(length: number, width: number): Yield {
    const { keep, rules } = this.#request;
    const { kerf } = rules.limits;
    return { pieces: 0, kept: keep(length - kerf, width - kerf), way: { kind: 'whole' } };
  }

  /** Lays that the rectangle is just as large as. */
  exact(frontier: Frontier, length: number, width: number): void {
    for (const lay of this.lays) {
      if (lay.length !== length || lay.width !== width) continue;
      frontier.add(this.#request.combinations.one(lay.piece), 0, { kind: 'lay', lay });
    }
  }

  /** Lays as long as the rectangle square to the last cuts, trimmed by one cut that runs so. */
  trimmed(frontier: Frontier, length: number, width: number, runs: Rolling): void {
    const [breadth, span] = runs === 'along' ? [width, length] : [length, width];
    for (const lay of this.lays) {
      const [extent, along] = runs === 'along' ? [lay.width, lay.length] : [lay.length, lay.width];
      if (along !== span || extent >= breadth || !this.#mayCut(breadth, span, extent)) continue;
      const { kerf } = this.#request.rules.limits;
      const far = breadth - extent;
      const rest = runs === 'along' ? [length, far] : [far, width];
      const kept = far > kerf ? this.uncut(rest[0], rest[1]).kept : 0;
      frontier.add(this.#request.combinations.one(lay.piece), kept, { kind: 'lay', lay });
    }
  }

  /** All divisions of a rectangle by one cut that the shear can make. */
  divisions(length: number, width: number, runs: Rolling): readonly Division[] {
    const { kerf } = this.#request.rules.limits;
    const [breadth, span] = runs === 'along' ? [width, length] : [length, width];
    const divisions: Division[] = [];
    this.#take(breadth * TO_LOOK_UP);
    for (let near = 1; near < breadth; near++) {
      if (!this.#mayCut(breadth, span, near)) continue;
      divisions.push({ runs, near, far: breadth - near > kerf ? breadth - near : 0 });
    }
    return divisions;
  }

  /** Adds what two parts yield together. */
  both(
    frontier: Frontier,
    cut: Omit<WayToCut, 'kind' | 'near' | 'far'>,
    near: readonly Yield[],
    far: readonly Yield[] | undefined,
  ): void {
    const { combinations } = this.#request;
    for (const one of near) {
      if (far === undefined) {
        frontier.add(one.pieces, one.kept, { kind: 'cut', ...cut, near: one });
        continue;
      }
      this.#take(far.length);
      for (const other of far) {
        const pieces = combinations.sum(one.pieces, other.pieces);
        const kept = one.kept + other.kept;
        if (pieces === 0 || !frontier.betters(pieces, kept)) continue;
        frontier.add(pieces, kept, { kind: 'cut', ...cut, near: one, far: other });
      }
    }
  }

  #mayCut(breadth: number, span: number, near: number): boolean {
    const { limits } = this.#request.rules;
    const { kerf, longestCut, narrowest } = limits;
    return span - kerf <= longestCut && near - kerf >= narrowest && mayRest(breadth - near, limits);
  }

  #take(steps: number): void {
    this.#request.left.steps -= steps;
    if (this.#request.left.steps < 0) throw new TooMuch();
  }
}
