import { type Block, beside, cutFromBox, layBlock } from '../box-solver/block.js';
import type { BoxSolver } from '../box-solver/box-solver.js';
import { Chain } from '../box-solver/chain.js';
import { boxRaster, laysWithin, type RasterPoints, upTo } from '../box-solver/raster-points.js';
import type { Box, BoxLay } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Part } from '../pattern/part.js';
import type { Rolling } from '../problem.js';
import { RasterGrid } from './raster-grid.js';

/**
 * The worth of a box in which any trim is allowed and remnants are worth nothing:
 * exact, over reduced raster points.
 *
 * The longest cut needs no further states. Where both sides of a rectangle are
 * within it, nothing in it needs a longer cut, and trims are free. Where only one
 * side is longer, cuts run square to it until what they part off is within it
 * too, and only a piece of the exact breadth may stay longer: a chain of parts.
 * Where both are longer, no cut can be made at all.
 */
export class RasterBox implements BoxSolver {
  readonly #box: Box;
  readonly #limits: Limits;
  readonly #way: BlockSolver;

  constructor(box: Box, limits: Limits) {
    this.#box = box;
    this.#limits = limits;
    const { xs, ys } = boxRaster(box, limits);
    const lays = laysWithin(box);
    const reach = limits.longestCut + limits.kerf;
    if (box.length <= reach && box.width <= reach) {
      this.#way = new BothWays(new RasterGrid(xs, ys, lays));
    } else if (box.width <= reach) {
      const grid = new RasterGrid(upTo(xs, reach), ys, lays);
      const whole = lays.filter(({ length, width }) => length > reach && width === box.width);
      this.#way = new Sections(grid, 'across', xs, whole);
    } else if (box.length <= reach) {
      const grid = new RasterGrid(xs, upTo(ys, reach), lays);
      const whole = lays.filter(({ length, width }) => width > reach && length === box.length);
      this.#way = new Sections(grid, 'along', ys, whole);
    } else {
      this.#way = new OnePiece(
        lays.filter(({ length, width }) => length === box.length && width === box.width),
      );
    }
  }

  solve(values: ArrayLike<number>): number {
    return this.#way.solve(values);
  }

  part(): Part | undefined {
    const block = this.#way.block();
    return block === undefined ? undefined : cutFromBox(block, this.#box, this.#limits);
  }
}

/** The same, for what is cut and not yet how. */
interface BlockSolver {
  solve(values: ArrayLike<number>): number;
  block(): Block | undefined;
}

/** A box that may be cut both ways. */
class BothWays implements BlockSolver {
  readonly #grid: RasterGrid;
  constructor(grid: RasterGrid) {
    this.#grid = grid;
  }
  solve(values: ArrayLike<number>): number {
    this.#grid.solve(values);
    return this.#grid.worth(this.#grid.columns - 1, this.#grid.rows - 1);
  }
  block(): Block | undefined {
    return this.#grid.block(this.#grid.columns - 1, this.#grid.rows - 1);
  }
}

/** A box too long to be cut but one way, into parts of its whole breadth. */
class Sections implements BlockSolver {
  readonly #grid: RasterGrid;
  readonly #cuts: Rolling;
  readonly #chain: Chain;
  /** Pieces longer than the longest cut, with the point each reaches to. */
  readonly #whole: readonly { readonly lay: BoxLay; readonly point: number }[];
  readonly #items: Float64Array;
  #values: ArrayLike<number> = [];

  constructor(grid: RasterGrid, cuts: Rolling, points: RasterPoints, whole: readonly BoxLay[]) {
    this.#grid = grid;
    this.#cuts = cuts;
    this.#chain = new Chain(points);
    this.#whole = whole.map((lay) => ({
      lay,
      point: points.above[cuts === 'across' ? lay.length : lay.width],
    }));
    this.#items = new Float64Array(points.at.length);
  }

  solve(values: ArrayLike<number>): number {
    const items = this.#items.fill(0);
    this.#values = Float64Array.from(values);
    this.#grid.solve(values);
    const cut = this.#cuts === 'across' ? this.#grid.columns : this.#grid.rows;
    for (let point = 0; point < cut; point++) items[point] = this.#grid.worth(...this.#cell(point));
    for (const { lay, point } of this.#whole) {
      items[point] = Math.max(items[point], values[lay.piece]);
    }
    return this.#chain.solve(items);
  }

  block(): Block | undefined {
    const blocks = this.#chain.parts().map((point) => this.#part(point));
    return blocks.length === 0 ? undefined : beside(this.#cuts, blocks);
  }

  #part(point: number): Block {
    const whole = this.#whole.find(
      (one) => one.point === point && this.#values[one.lay.piece] === this.#items[point],
    );
    const block =
      whole === undefined ? this.#grid.block(...this.#cell(point)) : layBlock(whole.lay);
    if (block === undefined) throw new Error(`nothing is worth cutting up to point ${point}`);
    return block;
  }

  #cell(point: number): [column: number, row: number] {
    return this.#cuts === 'across' ? [point, this.#grid.rows - 1] : [this.#grid.columns - 1, point];
  }
}

/** A box that cannot be cut: it may be a piece as it is. */
class OnePiece implements BlockSolver {
  readonly #lays: readonly BoxLay[];
  #best: BoxLay | undefined;
  constructor(lays: readonly BoxLay[]) {
    this.#lays = lays;
  }
  solve(values: ArrayLike<number>): number {
    let worth = 0;
    this.#best = undefined;
    for (const lay of this.#lays) {
      if (values[lay.piece] > worth) {
        worth = values[lay.piece];
        this.#best = lay;
      }
    }
    return worth;
  }
  block(): Block | undefined {
    return this.#best === undefined ? undefined : layBlock(this.#best);
  }
}
