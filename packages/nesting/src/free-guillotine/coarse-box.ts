import { type Block, beside, cutFromBox, layBlock } from '../pattern/block.js';
import type { Box, BoxLay } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Part } from '../pattern/part.js';
import type { BoxSolver } from './box-solver.js';
import { laysWithin, RasterBox } from './raster-box.js';
import { ROUNDING } from './rounding.js';

/**
 * A box with more rectangles than there is room for, measured in steps of several
 * ticks. With every piece rounded down, and the box too, whatever fits still fits:
 * that gives a worth which no pattern exceeds. So does the area, which is all there
 * is where a piece is smaller than a step. With every piece rounded up, what fits
 * does so in ticks as well: that gives a pattern, which may be worth less.
 */
export class CoarseBox implements BoxSolver {
  readonly #box: Box;
  readonly #limits: Limits;
  readonly #above: RasterBox | undefined;
  readonly #below: RasterBox;

  /** @param step ticks, at least 1 */
  constructor(box: Box, limits: Limits, step: number) {
    this.#box = box;
    this.#limits = limits;
    const coarse = coarseLimits(limits, step);
    if (canRoundDown(box, step)) {
      this.#above = new RasterBox(coarseBox(box, step, Math.floor), coarse);
    }
    this.#below = new RasterBox(coarseBox(box, step, Math.ceil), coarse);
  }

  solve(values: ArrayLike<number>): number {
    this.#below.solve(values);
    const byArea = worthByArea(this.#box, values);
    return Math.min(byArea, this.#above?.solve(values) ?? byArea);
  }

  part(): Part | undefined {
    const block = this.#below.block();
    if (block === undefined) return undefined;
    return cutFromBox(inTicks(block, this.#box.lays), this.#box, this.#limits);
  }
}

/** Whether every piece that fits is at least one step each way. */
function canRoundDown(box: Box, step: number): boolean {
  return laysWithin(box).every(({ length, width }) => Math.min(length, width) >= step);
}

function worthByArea(box: Box, values: ArrayLike<number>): number {
  const perTick = laysWithin(box).map(
    ({ piece, length, width }) => values[piece] / (length * width),
  );
  return box.length * box.width * Math.max(0, ...perTick) * (1 + ROUNDING);
}

/** @param round what to do with sizes of pieces that are no whole number of steps */
export function coarseBox(box: Box, step: number, round: (size: number) => number): Box {
  return {
    length: Math.floor(box.length / step),
    width: Math.floor(box.width / step),
    firstCuts: box.firstCuts,
    lays: laysWithin(box).map((lay) => ({
      ...lay,
      length: Math.max(1, round(lay.length / step)),
      width: Math.max(1, round(lay.width / step)),
    })),
  };
}

export function coarseLimits({ longestCut, kerf }: Limits, step: number): Limits {
  return { kerf: 0, longestCut: Math.floor((longestCut + kerf) / step), narrowest: 1 };
}

function inTicks({ made }: Block, lays: readonly BoxLay[]): Block {
  if ('cuts' in made) {
    return beside(
      made.cuts,
      made.blocks.map((block) => inTicks(block, lays)),
    );
  }
  const lay = lays.find(({ piece, turned }) => piece === made.piece && turned === made.turned);
  if (lay === undefined) throw new Error(`piece ${made.piece} does not lie so on this box`);
  return layBlock(lay);
}
