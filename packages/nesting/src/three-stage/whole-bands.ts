import type { BoxSolver } from '../box-solver/box-solver.js';
import { chainParts, ExactChain, type Remnants } from '../box-solver/exact-chain.js';
import { grouped } from '../box-solver/grouped.js';
import { laysWithin } from '../box-solver/raster-points.js';
import { RemnantTable } from '../box-solver/remnant-table.js';
import type { Box, BoxLay } from '../pattern/box.js';
import { type Limits, mayRest } from '../pattern/limits.js';
import type { Part, Slice } from '../pattern/part.js';
import type { KeepRule, Rolling } from '../problem.js';

/**
 * The same as `RasterBands` where every tick matters: nothing narrower than the
 * limit may be parted off, or remnants are worth what the rule for keeping them
 * gives. Sections of every whole length and height; exact, but slower.
 */
export class WholeBands implements BoxSolver {
  readonly #box: Box;
  readonly #limits: Limits;
  readonly #remnants: RemnantTable | undefined;
  readonly #reach: number;
  /** By their width. */
  readonly #lays: ReadonlyMap<number, readonly BoxLay[]>;
  /** What a section of length x and height y is worth, at x * (box width + 1) + y. */
  readonly #stack: Float64Array;
  readonly #stackChain: ExactChain;
  readonly #sectionChain: ExactChain;
  readonly #bandChain: ExactChain;
  /** What a row of sections of one height is worth, by its length. */
  readonly #row: Float64Array;
  /** What bands are worth, by their height together. */
  readonly #bands: Float64Array;
  #values: ArrayLike<number> = [];
  #coin = 0;

  constructor(box: Box, limits: Limits, rule?: KeepRule) {
    const { length, width } = box;
    this.#box = box;
    this.#limits = limits;
    if (rule !== undefined) {
      this.#remnants = new RemnantTable(length, width, limits.kerf, rule);
    }
    this.#reach = limits.longestCut + limits.kerf;
    this.#lays = grouped(laysWithin(box), (lay) => lay.width);
    this.#stack = new Float64Array((length + 1) * (width + 1));
    this.#stackChain = new ExactChain(limits);
    this.#sectionChain = new ExactChain(limits);
    this.#bandChain = new ExactChain(limits);
    this.#row = new Float64Array(length + 1);
    this.#bands = new Float64Array(width + 1);
  }

  solve(values: ArrayLike<number>, coin: number): number {
    const { length, width } = this.#box;
    this.#values = Float64Array.from(values);
    this.#coin = coin;
    for (let x = 1; x <= length; x++) {
      this.#chain(this.#stackChain, width, this.#stack, x * (width + 1), {
        mayCut: x <= this.#reach,
        remnants: this.#remnants?.ofLength(x, coin),
        uncut: (y) => this.#uncut(x, y),
        remnant: (y) => this.#remnant(x, y),
      });
    }
    this.#chain(this.#bandChain, width, this.#bands, 0, {
      mayCut: length <= this.#reach,
      remnants: this.#remnants?.ofLength(length, coin),
      uncut: (y) => this.#band(y),
      remnant: (y) => this.#remnant(length, y),
    });
    return this.#bands[width];
  }

  part(): Part | undefined {
    return this.#bandsPart(this.#box.width);
  }

  /** Fills in the best of every extent, as one part or as a row. */
  #chain(
    chain: ExactChain,
    extent: number,
    best: Float64Array,
    start: number,
    { mayCut, remnants, uncut, remnant }: Row,
  ): void {
    chain.restart();
    best[start] = 0;
    for (let x = 1; x <= extent; x++) {
      const whole = uncut(x);
      const cut = mayCut ? chain.cut(x, best, start, remnants) : 0;
      best[start + x] = Math.max(whole, cut);
      if (mayCut && whole > cut && whole > remnant(x)) chain.add(x, whole);
    }
  }

  /** Fills in the rows of sections of one height. */
  #band(y: number): number {
    const { length, width } = this.#box;
    const stack = this.#stack;
    this.#chain(this.#sectionChain, length, this.#row, 0, {
      mayCut: y <= this.#reach,
      remnants: this.#remnants?.ofWidth(y, this.#coin),
      uncut: (x) => stack[x * (width + 1) + y],
      remnant: (x) => this.#remnant(x, y),
    });
    return this.#row[length];
  }

  /** One piece, trimmed to its length, or a remnant. */
  #uncut(x: number, y: number): number {
    let worth = this.#remnant(x, y);
    for (const lay of this.#lays.get(y) ?? []) worth = Math.max(worth, this.#trimmed(lay, x));
    return worth;
  }

  /** A piece trimmed from a length, with what its trim is worth; 0 where it cannot be. */
  #trimmed({ piece, length, width }: BoxLay, from: number): number {
    if (length === from) return this.#values[piece];
    const { kerf, narrowest } = this.#limits;
    const rest = from - length;
    if (rest < 0 || width > this.#reach) return 0;
    if (length - kerf < narrowest || !mayRest(rest, this.#limits)) return 0;
    return this.#values[piece] + this.#remnant(rest, width);
  }

  #remnant(x: number, y: number): number {
    return this.#remnants === undefined ? 0 : this.#coin * this.#remnants.coins(x, y);
  }

  #bandsPart(height: number): Part | undefined {
    const bands =
      this.#box.length <= this.#reach
        ? chainParts(height, this.#limits, (y) => this.#bands[y])
        : [height];
    if (bands[0] !== height) return divided('along', bands, (y) => this.#bandsPart(y));
    this.#band(height);
    const sections = this.#sectionsPart(this.#box.length, height);
    return divided('along', [height], () => sections);
  }

  /** Of the row of sections last filled in. */
  #sectionsPart(length: number, height: number): Part | undefined {
    const sections =
      height <= this.#reach ? chainParts(length, this.#limits, (x) => this.#row[x]) : [length];
    if (sections[0] !== length) {
      return divided('across', sections, (x) => this.#sectionsPart(x, height));
    }
    return divided('across', [length], () => this.#stackPart(length, height));
  }

  #stackPart(length: number, height: number): Part | undefined {
    const worth = (y: number) => this.#stack[length * (this.#box.width + 1) + y];
    const lay = this.#lays.get(height)?.find((lay) => this.#trimmed(lay, length) === worth(height));
    if (worth(height) > 0 && lay !== undefined) {
      return { kind: 'lay', piece: lay.piece, turned: lay.turned };
    }
    if (length > this.#reach) return undefined;
    const stack = chainParts(height, this.#limits, worth);
    if (stack[0] === height) return undefined;
    return divided('along', stack, (y) => this.#stackPart(length, y));
  }
}

/** What is known of one direction in which parts stand in a row. */
interface Row {
  readonly mayCut: boolean;
  /** What a rest is worth; absent where that is nothing. */
  readonly remnants: Remnants | undefined;
  /** What an extent is worth as one part. */
  readonly uncut: (extent: number) => number;
  readonly remnant: (extent: number) => number;
}

/** Remnants join the rest behind the last part, where they are worth no less. */
function divided(
  cuts: Rolling,
  extents: readonly number[],
  partOf: (extent: number) => Part | undefined,
): Part | undefined {
  const parts: Slice[] = [];
  for (const extent of extents) {
    const part = partOf(extent);
    if (part !== undefined) parts.push({ extent, part });
  }
  return parts.length === 0 ? undefined : { kind: 'split', cuts, parts };
}
