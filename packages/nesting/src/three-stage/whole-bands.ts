import type { BoxSolver } from '../box-solver/box-solver.js';
import { ExactChain, withKerf } from '../box-solver/exact-chain.js';
import { grouped } from '../box-solver/grouped.js';
import { laysWithin } from '../box-solver/raster-points.js';
import { RemnantTable } from '../box-solver/remnant-table.js';
import { rowParts } from '../box-solver/row-parts.js';
import type { Box, BoxLay } from '../pattern/box.js';
import { type Limits, mayRest } from '../pattern/limits.js';
import type { Part, Slice } from '../pattern/part.js';
import type { KeepRule, Rolling } from '../problem.js';
import { fillRow, remnantAt } from './fill-row.js';
import { sectionColumns } from './section-columns.js';

/**
 * Which heights of bands, and lengths of sections where these count, are tried: `few` are those of the pieces,
 * and what slivers demand beyond, which is much quicker and finds good patterns; `every` is needed for the best.
 */
export type TriedSizes = 'few' | 'every';

/**
 * The same as `RasterBands` where every tick matters: nothing narrower than the
 * limit may be parted off, or remnants are worth what the rule for keeping them
 * gives. Sections of every whole length and height; exact, but slower. Where remnants
 * are worth nothing, stacks are the same for all lengths to which the same pieces can be trimmed.
 */
export class WholeBands implements BoxSolver {
  /** By height, 1 where bands are tried. */
  readonly #tried: Uint8Array;
  /** By length, 1 where sections are tried. */
  readonly #triedLengths: Uint8Array;
  readonly #box: Box;
  readonly #limits: Limits;
  readonly #remnants: RemnantTable | undefined;
  readonly #reach: number;
  /** By their width. */
  readonly #lays: ReadonlyMap<number, readonly BoxLay[]>;
  /** By length of a section, its column of stacks. */
  readonly #columnOf: Int32Array;
  /** What a section of height y is worth, at its column * (box width + 1) + y. */
  readonly #stack: Float64Array;
  readonly #stackChain: ExactChain;
  readonly #sectionChain: ExactChain;
  readonly #bandChain: ExactChain;
  /** What rows of one direction are worth with no rest that only a kerf takes, by their extent. */
  readonly #stackRow: Float64Array;
  readonly #sectionRow: Float64Array;
  readonly #bandRow: Float64Array;
  /** What one stack of each height is worth as one piece or remnant. */
  readonly #piece: Float64Array;
  /** What one section of each length is worth, in the band that is looked at. */
  readonly #sections: Float64Array;
  /** What one band of each height is worth. */
  readonly #band: Float64Array;
  /** What the whole box is worth. */
  #worth = 0;
  #values: ArrayLike<number> = [];
  #coin = 0;

  /** @param sizes that are tried */
  constructor(box: Box, limits: Limits, rule: KeepRule | undefined, sizes: TriedSizes = 'every') {
    const { length, width } = box;
    this.#box = box;
    this.#limits = limits;
    if (rule !== undefined) {
      this.#remnants = new RemnantTable(length, width, limits.kerf, rule);
    }
    this.#reach = limits.longestCut + limits.kerf;
    const lays = laysWithin(box);
    this.#lays = grouped(lays, (lay) => lay.width);
    const tried = (extents: readonly number[], breadth: number, few: boolean) =>
      few ? triedExtents(extents, breadth, limits) : new Uint8Array(breadth + 1).fill(1);
    const few = sizes === 'few';
    const lengthsCount = rule !== undefined;
    const [lengths, heights] = [lays.map((lay) => lay.length), lays.map((lay) => lay.width)];
    this.#tried = tried(heights, width, few);
    this.#triedLengths = tried(lengths, length, few && lengthsCount);
    this.#columnOf = sectionColumns(box, limits, lengthsCount ? this.#triedLengths : undefined);
    this.#stack = new Float64Array((this.#columnOf[length] + 1) * (width + 1));
    this.#stackChain = new ExactChain(limits, false);
    this.#sectionChain = new ExactChain(limits, false);
    this.#bandChain = new ExactChain(limits, false);
    this.#stackRow = new Float64Array(width + 1);
    this.#sectionRow = new Float64Array(length + 1);
    this.#bandRow = new Float64Array(width + 1);
    this.#piece = new Float64Array(width + 1);
    this.#sections = new Float64Array(length + 1);
    this.#band = new Float64Array(width + 1);
  }

  solve(values: ArrayLike<number>, coin: number): number {
    const { length, width } = this.#box;
    this.#values = Float64Array.from(values);
    this.#coin = coin;
    for (let x = 1; x <= length; x++) {
      if (this.#columnOf[x] === this.#columnOf[x - 1] || this.#triedLengths[x] === 0) continue;
      this.#fillStacks(x);
      const start = this.#columnOf[x] * (width + 1);
      if (x > this.#reach) this.#stack.set(this.#stackRow, start);
      else withKerf(width, this.#limits, this.#stackRow, this.#stack, start);
    }
    for (let y = 1; y <= width; y++) {
      if (this.#tried[y] === 0) this.#band[y] = this.#remnant(length, y);
      else if (this.#tried[y - 1] === 1 && this.#sameSections(y)) this.#band[y] = this.#band[y - 1];
      else {
        this.#fillSections(y);
        this.#band[y] = this.#whole(this.#sectionRow, length, y);
      }
    }
    fillRow(this.#bandChain, this.#bandRow, {
      mayCut: length <= this.#reach,
      remnants: this.#remnants?.ofLength(length, coin),
      uncut: this.#band,
    });
    this.#worth = this.#whole(this.#bandRow, width, length);
    return this.#worth;
  }

  part(): Part | undefined {
    const { length, width } = this.#box;
    const band = (y: number) => this.#band[y];
    const bands = this.#rowParts(this.#bandRow, width, length, this.#worth, band);
    return divided('along', bands, (y) =>
      this.#tried[y] === 1 ? this.#sectionsPart(y) : undefined,
    );
  }

  /** Stacks of every height in sections of one length. */
  #fillStacks(x: number): void {
    const remnants = this.#remnants?.ofLength(x, this.#coin);
    const piece = this.#piece;
    for (let y = 0; y < piece.length; y++) piece[y] = remnantAt(remnants, y);
    for (const [y, lays] of this.#lays) {
      for (const lay of lays) piece[y] = Math.max(piece[y], this.#trimmed(lay, x));
    }
    fillRow(this.#stackChain, this.#stackRow, {
      mayCut: x <= this.#reach,
      remnants,
      uncut: piece,
    });
  }

  /** Rows of sections of one height. */
  #fillSections(y: number): void {
    const sections = this.#sections;
    for (let x = 1; x < sections.length; x++) sections[x] = this.#section(x, y);
    fillRow(this.#sectionChain, this.#sectionRow, {
      mayCut: y <= this.#reach,
      remnants: this.#remnants?.ofWidth(y, this.#coin),
      uncut: sections,
    });
  }

  /** Whether sections of one height are worth what those of the height before are. */
  #sameSections(y: number): boolean {
    if (this.#remnants !== undefined || y === 1 || y === this.#reach + 1) return false;
    const stack = this.#stack;
    for (let at = y; at < stack.length; at += this.#box.width + 1) {
      if (stack[at] !== stack[at - 1]) return false;
    }
    return true;
  }

  #section(x: number, y: number): number {
    if (this.#triedLengths[x] === 0) return this.#remnant(x, y);
    return this.#stack[this.#columnOf[x] * (this.#box.width + 1) + y];
  }

  /** What a row is worth where a kerf may take its rest, cut by cuts of a length. */
  #whole(row: Float64Array, extent: number, cutLength: number): number {
    const { kerf, narrowest } = this.#limits;
    let worth = row[extent];
    if (cutLength > this.#reach) return worth;
    for (let x = Math.max(extent - kerf, narrowest + kerf); x < extent; x++) {
      worth = Math.max(worth, row[x]);
    }
    return worth;
  }

  #rowParts(
    row: Float64Array,
    extent: number,
    cutLength: number,
    worth: number,
    uncut: (extent: number) => number,
  ): readonly number[] {
    if (cutLength > this.#reach) return [extent];
    return rowParts(extent, this.#limits, worth, (x) => row[x], uncut);
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

  #sectionsPart(height: number): Part | undefined {
    this.#fillSections(height);
    const sections = this.#rowParts(
      this.#sectionRow,
      this.#box.length,
      height,
      this.#band[height],
      (x) => this.#section(x, height),
    );
    return divided('across', sections, (x) =>
      this.#triedLengths[x] === 1 ? this.#stackPart(x, height) : undefined,
    );
  }

  #stackPart(length: number, height: number): Part | undefined {
    const worth = this.#section(length, height);
    if (worth === this.#uncut(length, height)) return this.#piecePart(length, height);
    this.#fillStacks(length);
    const stack = this.#rowParts(this.#stackRow, height, length, worth, (y) =>
      this.#uncut(length, y),
    );
    return divided('along', stack, (y) => this.#piecePart(length, y));
  }

  /** One piece, trimmed to its length, or nothing where it is a remnant. */
  #piecePart(length: number, height: number): Part | undefined {
    const worth = this.#uncut(length, height);
    const lay = this.#lays.get(height)?.find((lay) => this.#trimmed(lay, length) === worth);
    return worth === 0 || lay === undefined
      ? undefined
      : { kind: 'lay', piece: lay.piece, turned: lay.turned };
  }
}

/** By extent up to a breadth, 1 for those of pieces, the least that a sliver may be beyond them, and the whole. */
function triedExtents(
  extents: readonly number[],
  breadth: number,
  { kerf, narrowest }: Limits,
): Uint8Array {
  const tried = new Uint8Array(breadth + 1);
  tried[breadth] = 1;
  for (const extent of extents) {
    tried[extent] = 1;
    // A typed array takes nothing beyond its end.
    tried[extent + kerf + narrowest] = 1;
  }
  return tried;
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
