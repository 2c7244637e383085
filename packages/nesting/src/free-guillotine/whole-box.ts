import type { BoxSolver } from '../box-solver/box-solver.js';
import { ExactChain } from '../box-solver/exact-chain.js';
import { grouped } from '../box-solver/grouped.js';
import { RemnantTable } from '../box-solver/remnant-table.js';
import { chainParts } from '../box-solver/row-parts.js';
import type { Box, BoxLay } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Part, Slice } from '../pattern/part.js';
import type { KeepRule, Rolling } from '../problem.js';

/** Columns solved at a time, so few that all of them stay near the processor. */
const BAND = 64;

/**
 * The worth of a box where every tick matters: nothing narrower than the limit
 * may be parted off, or remnants are worth what the rule for keeping them gives.
 * Then trims are not free and no raster loses nothing, so its states are the
 * rectangles of every whole size: exact, but slower than `RasterBox`.
 *
 * Of a rectangle as the cuts leave it, the worth is that of one piece of the very
 * size, of the remnant, or of a row of parts across or along.
 */
export class WholeBox implements BoxSolver {
  readonly #box: Box;
  readonly #limits: Limits;
  readonly #remnants: RemnantTable | undefined;
  /** By the cell of their size. */
  readonly #lays: ReadonlyMap<number, readonly BoxLay[]>;
  /** The rectangle of length x and width y at y * (box length + 1) + x. */
  readonly #byRow: Float64Array;
  /** The same at x * (box width + 1) + y. */
  readonly #byColumn: Float64Array;
  readonly #rows: readonly ExactChain[];
  readonly #columns: readonly ExactChain[];
  #values: ArrayLike<number> = [];
  #coin = 0;

  constructor(box: Box, limits: Limits, rule?: KeepRule) {
    const { length, width } = box;
    this.#box = box;
    this.#limits = limits;
    if (rule !== undefined) {
      this.#remnants = new RemnantTable(length, width, limits.kerf, rule);
    }
    this.#lays = grouped(
      box.lays.filter((lay) => lay.length <= length && lay.width <= width),
      (lay) => lay.width * (length + 1) + lay.length,
    );
    this.#byRow = new Float64Array((length + 1) * (width + 1));
    this.#byColumn = new Float64Array((length + 1) * (width + 1));
    this.#rows = Array.from({ length: width + 1 }, () => new ExactChain(limits, true));
    this.#columns = Array.from({ length: length + 1 }, () => new ExactChain(limits, true));
  }

  solve(values: ArrayLike<number>, coin: number): number {
    const { length, width } = this.#box;
    const reach = this.#limits.longestCut + this.#limits.kerf;
    const byRow = this.#byRow.fill(0);
    const byColumn = this.#byColumn;
    const rows = this.#rows;
    const columns = this.#columns;
    this.#values = Float64Array.from(values);
    this.#coin = coin;
    for (const [cell, lays] of this.#lays) {
      for (const { piece } of lays) byRow[cell] = Math.max(byRow[cell], values[piece]);
    }
    for (const chain of rows) chain.restart();
    for (const chain of columns) chain.restart();
    const table = this.#remnants;
    const ofWidth = rows.map((_, y) => table?.ofWidth(y, coin));
    const ofLength = columns.map((_, x) => table?.ofLength(x, coin));
    for (let from = 1; from <= length; from += BAND) {
      const to = Math.min(length, from + BAND - 1);
      for (let y = 1; y <= width; y++) {
        const start = y * (length + 1);
        const row = rows[y];
        for (let x = from; x <= to; x++) {
          const columnStart = x * (width + 1);
          const across = y <= reach ? row.cut(x, byRow, start, ofWidth[y]) : 0;
          const along = x <= reach ? columns[x].cut(y, byColumn, columnStart, ofLength[x]) : 0;
          const remnant = table === undefined ? 0 : coin * table.coins(x, y);
          const best = Math.max(byRow[start + x], remnant, across, along);
          byRow[start + x] = best;
          byColumn[columnStart + y] = best;
          if (best === remnant) continue;
          if (best > across && y <= reach) row.add(x, best);
          if (best > along && x <= reach) columns[x].add(y, best);
        }
      }
    }
    return this.#worth(length, width);
  }

  part(): Part | undefined {
    const { length, width, firstCuts } = this.#box;
    const part = this.#part(length, width);
    if (part === undefined || part.kind === 'lay' || firstCuts.includes(part.cuts)) return part;
    // Where no first cut of that direction is needed, the box is one strip of its whole breadth.
    return part.cuts === 'along'
      ? { kind: 'split', cuts: 'across', parts: [{ extent: length, part }] }
      : { kind: 'split', cuts: 'along', parts: [{ extent: width, part }] };
  }

  #worth(x: number, y: number): number {
    return this.#byRow[y * (this.#box.length + 1) + x];
  }

  /** How a rectangle is cut, or nothing where it is a remnant. */
  #part(x: number, y: number): Part | undefined {
    const worth = this.#worth(x, y);
    const lay = this.#lays
      .get(y * (this.#box.length + 1) + x)
      ?.find(({ piece }) => this.#values[piece] === worth);
    if (worth > 0 && lay !== undefined) {
      return { kind: 'lay', piece: lay.piece, turned: lay.turned };
    }
    if (worth === this.#coin * (this.#remnants?.coins(x, y) ?? 0)) return undefined;
    return this.#divided('across', x, y) ?? this.#divided('along', x, y);
  }

  #divided(cuts: Rolling, x: number, y: number): Part | undefined {
    const across = cuts === 'across';
    const extent = across ? x : y;
    const reach = this.#limits.longestCut + this.#limits.kerf;
    if ((across ? y : x) > reach) return undefined;
    const extents = chainParts(extent, this.#limits, (part) =>
      across ? this.#worth(part, y) : this.#worth(x, part),
    );
    if (extents.length === 1 && extents[0] === extent) return undefined;
    const parts: Slice[] = [];
    for (const extent of extents) {
      const part = across ? this.#part(extent, y) : this.#part(x, extent);
      // Remnants join the rest behind the last part, where they are worth no less.
      if (part !== undefined) parts.push({ extent, part });
    }
    return parts.length === 0 ? undefined : { kind: 'split', cuts, parts };
  }
}
