import type { Box, BoxLay } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { LayPart, Part, SplitPart } from '../pattern/part.js';
import { type BoxSolver, loosePartOf } from './box-solver.js';
import type { Effort } from './effort.js';
import { laysWithin } from './raster-points.js';
import { worthByArea } from './worth-by-area.js';

/**
 * A box with more rectangles than there is room for, measured in steps of several
 * ticks. With every piece rounded down, and the box too, whatever fits still fits:
 * that gives a worth which no pattern exceeds. So does the area, which is all there
 * is where a piece is smaller than a step. With every piece rounded up, what fits
 * does so in ticks as well: that gives a pattern, which may be worth less.
 */
export class CoarseBox implements BoxSolver {
  readonly #box: Box;
  readonly #above: BoxSolver | undefined;
  readonly #below: BoxSolver;

  /**
   * @param step ticks, at least 1
   * @param solverFor solves a box of coarse sizes, in which nothing is too narrow
   */
  constructor(
    box: Box,
    limits: Limits,
    step: number,
    solverFor: (box: Box, limits: Limits) => BoxSolver,
  ) {
    this.#box = box;
    const coarse = coarseLimits(limits, step);
    if (canRoundDown(box, step)) {
      this.#above = solverFor(coarseBox(box, step, Math.floor), coarse);
    }
    this.#below = solverFor(coarseBox(box, step, Math.ceil), coarse);
  }

  solve(values: ArrayLike<number>): number {
    this.#below.solve(values, 0);
    const byArea = worthByArea(this.#box, values);
    return Math.min(byArea, this.#above?.solve(values, 0) ?? byArea);
  }

  part(): Part | undefined {
    const part = this.#below.part();
    return part === undefined ? undefined : new InTicks(this.#box.lays).of(part).part;
  }

  loosePart(): Part | undefined {
    return this.#above === undefined ? this.part() : loosePartOf(this.#above);
  }
}

/** Longer boxes are not looked through tick by tick. */
const LONGEST_SCAN = 4_000_000;

/**
 * The ticks in which to measure a box: the least power of 2 for which it is small
 * enough, with the pieces rounded up and down beside each other.
 * @param cellsOf rectangles that are kept in memory for a box
 */
export function coarseStep(
  box: Box,
  limits: Limits,
  { mostCells }: Effort,
  cellsOf: (box: Box, limits: Limits) => number,
): number {
  let step = 1;
  while (Math.max(box.length, box.width) / step > LONGEST_SCAN) step *= 2;
  if (step === 1 && cellsOf(box, limits) <= mostCells) return step;
  for (step = Math.max(2, step); ; step *= 2) {
    const coarse = coarseLimits(limits, step);
    const cells = [Math.floor, Math.ceil].map((round) =>
      cellsOf(coarseBox(box, step, round), coarse),
    );
    if (Math.max(...cells) * cells.length <= Math.max(cells.length, mostCells)) return step;
  }
}

/** Whether every piece that fits is at least one step each way. */
function canRoundDown(box: Box, step: number): boolean {
  return laysWithin(box).every(({ length, width }) => Math.min(length, width) >= step);
}

/** @param round what to do with sizes of pieces that are no whole number of steps */
function coarseBox(box: Box, step: number, round: (size: number) => number): Box {
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

function coarseLimits({ longestCut, kerf }: Limits, step: number): Limits {
  return { kerf: 0, longestCut: Math.floor((longestCut + kerf) / step), narrowest: 1 };
}

/** Makes the same cuts with every part as large as its pieces are in ticks. */
class InTicks {
  readonly #lays: readonly BoxLay[];
  /** The same part comes again and again. */
  readonly #known = new Map<Part, SizedPart>();

  constructor(lays: readonly BoxLay[]) {
    this.#lays = lays;
  }

  of(part: Part): SizedPart {
    const known = this.#known.get(part);
    if (known !== undefined) return known;
    const sized = part.kind === 'lay' ? this.#lay(part) : this.#split(part);
    this.#known.set(part, sized);
    return sized;
  }

  #lay(part: LayPart): SizedPart {
    const lay = this.#lays.find(
      ({ piece, turned }) => piece === part.piece && turned === part.turned,
    );
    if (lay === undefined) throw new Error(`piece ${part.piece} does not lie so on this box`);
    return { part, length: lay.length, width: lay.width };
  }

  #split(part: SplitPart): SizedPart {
    const inner = part.parts.map(({ part }) => this.of(part));
    const across = part.cuts === 'across';
    const lengths = inner.map(({ length }) => length);
    const widths = inner.map(({ width }) => width);
    return {
      part: {
        ...part,
        parts: inner.map(({ part, length, width }) => ({ extent: across ? length : width, part })),
      },
      length: across ? sum(lengths) : Math.max(...lengths),
      width: across ? Math.max(...widths) : sum(widths),
    };
  }
}

/** A part with the room that its pieces need, in gross ticks. */
interface SizedPart {
  readonly part: Part;
  readonly length: number;
  readonly width: number;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
