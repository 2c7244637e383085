import type { BoxSolver } from '../box-solver/box-solver.js';
import { Chain } from '../box-solver/chain.js';
import { boxRaster, laysWithin, type RasterPoints, upTo } from '../box-solver/raster-points.js';
import type { Box, BoxLay } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Part, Slice } from '../pattern/part.js';
import { Stacks } from './stacks.js';

/**
 * The worth of a box cut first along its length into bands, each across into
 * sections, each along into a stack of pieces, each trimmed to its length; where
 * any trim is allowed and remnants are worth nothing. Exact, over reduced raster
 * points: a knapsack in every section, one over the sections of every band, one
 * over the bands (Gilmore and Gomory 1965, "Multistage cutting stock problems of
 * two and more dimensions").
 *
 * With a longest cut: a band higher than that cannot be cut across, so it is one
 * piece of the whole length. A box longer than that is one band; its sections that
 * are longer too hold one piece of the whole width.
 */
export class RasterBands implements BoxSolver {
  readonly #box: Box;
  readonly #xs: RasterPoints;
  readonly #ys: RasterPoints;
  readonly #stacks: Stacks;
  readonly #sections: Chain;
  readonly #bands: Chain;
  /** Pieces that are a section, or a band, as they are. */
  readonly #whole: readonly BoxLay[];
  /** Index of the highest band that may be cut across. */
  readonly #highest: number;
  readonly #oneBand: boolean;
  readonly #sectionItems: Float64Array;
  readonly #bandItems: Float64Array;
  #values: ArrayLike<number> = [];

  constructor(box: Box, limits: Limits) {
    const reach = limits.longestCut + limits.kerf;
    const lays = laysWithin(box);
    const { xs, ys } = boxRaster(box, limits);
    const oneBand = box.length > reach;
    const uncut = oneBand && box.width > reach;
    this.#box = box;
    this.#xs = xs;
    this.#ys = ys;
    this.#oneBand = oneBand;
    this.#whole = lays.filter(({ length, width }) =>
      oneBand
        ? length > reach && width === box.width && (!uncut || length === box.length)
        : width > reach && length === box.length,
    );
    const heights = upTo(ys, Math.min(box.width, reach));
    this.#highest = heights.at.length - 1;
    this.#stacks = new Stacks(
      uncut ? [] : lays.filter(({ length, width }) => length <= reach && width <= reach),
      heights,
    );
    this.#sections = new Chain(xs);
    this.#bands = new Chain(ys);
    this.#sectionItems = new Float64Array(xs.at.length);
    this.#bandItems = new Float64Array(ys.at.length);
  }

  solve(values: ArrayLike<number>): number {
    this.#values = Float64Array.from(values);
    this.#stacks.solve(values);
    if (this.#oneBand) return this.#sections.solve(this.#sectionsOf(this.#highest));
    const bands = this.#bandItems.fill(0);
    for (let height = 1; height <= this.#highest; height++) {
      const same = this.#stacks.lengths.every(
        (_, k) => this.#stacks.worth(k, height) === this.#stacks.worth(k, height - 1),
      );
      bands[height] = same ? bands[height - 1] : this.#sections.solve(this.#sectionsOf(height));
    }
    for (const { piece, width } of this.#whole) {
      const height = this.#ys.above[width];
      bands[height] = Math.max(bands[height], values[piece]);
    }
    return this.#bands.solve(bands);
  }

  part(): Part | undefined {
    const bands = this.#oneBand
      ? [this.#band(this.#highest)]
      : this.#bands.parts().map((height) => this.#band(height));
    const cut = bands.filter((sections) => sections.length > 0);
    if (cut.length === 0) return undefined;
    return {
      kind: 'split',
      cuts: 'along',
      parts: cut.map((sections) => {
        const height = this.#oneBand ? this.#box.width : Math.max(...sections.map(stackHeight));
        return {
          extent: height,
          part: {
            kind: 'split',
            cuts: 'across',
            parts: sections.map((lays) => section(lays, height)),
          },
        };
      }),
    };
  }

  /** What sections of a band are worth, by the point each reaches to. */
  #sectionsOf(height: number): Float64Array {
    const items = this.#sectionItems.fill(0);
    const stacks = this.#stacks;
    for (let k = 0; k < stacks.lengths.length; k++) {
      const worth = stacks.worth(k, height);
      if (worth > stacks.worth(k - 1, height)) items[this.#xs.above[stacks.lengths[k]]] = worth;
    }
    if (this.#oneBand) {
      for (const { piece, length } of this.#whole) {
        const point = this.#xs.above[length];
        items[point] = Math.max(items[point], this.#values[piece]);
      }
    }
    return items;
  }

  /** The stack of pieces of every section of a band. */
  #band(height: number): readonly (readonly BoxLay[])[] {
    if (!this.#oneBand) {
      const whole = this.#whole.find(
        ({ piece, width }) =>
          this.#ys.above[width] === height && this.#values[piece] === this.#bandItems[height],
      );
      if (whole !== undefined) return [[whole]];
    }
    const items = this.#sectionsOf(height);
    this.#sections.solve(items);
    return this.#sections.parts().map((point) => this.#section(point, height, items[point]));
  }

  #section(point: number, height: number, worth: number): readonly BoxLay[] {
    const { lengths } = this.#stacks;
    const length = lengths.findLastIndex((length) => this.#xs.above[length] === point);
    if (this.#stacks.worth(length, height) === worth) return this.#stacks.pieces(length, height);
    return this.#whole
      .filter((lay) => this.#xs.above[lay.length] === point && this.#values[lay.piece] === worth)
      .slice(0, 1);
  }
}

function stackHeight(lays: readonly BoxLay[]): number {
  return lays.reduce((sum, { width }) => sum + width, 0);
}

function section(lays: readonly BoxLay[], height: number): Slice {
  const slices = lays.map(({ piece, turned, width }): Slice => {
    return { extent: width, part: { kind: 'lay', piece, turned } };
  });
  const alone = slices.length === 1 && slices[0].extent === height;
  return {
    extent: Math.max(...lays.map(({ length }) => length)),
    part: alone ? slices[0].part : { kind: 'split', cuts: 'along', parts: slices },
  };
}
