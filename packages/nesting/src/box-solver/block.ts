import type { Box, BoxLay } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Part, Slice } from '../pattern/part.js';
import type { Rolling } from '../problem.js';

/**
 * Pieces to be cut as one rectangle: no larger than they need, whatever the size
 * of the metal they will come from. Gross ticks.
 */
export interface Block {
  readonly length: number;
  readonly width: number;
  readonly made: BoxLay | DividedBlock;
}

/** A rectangle divided by parallel cuts; none of the blocks is divided the same way again. */
export interface DividedBlock {
  readonly cuts: Rolling;
  readonly blocks: readonly Block[];
}

export function layBlock(lay: BoxLay): Block {
  return { length: lay.length, width: lay.width, made: lay };
}

/** Blocks side by side, parted by cuts of one direction. */
export function beside(cuts: Rolling, blocks: readonly Block[]): Block {
  const flat = blocks.flatMap((block) =>
    'cuts' in block.made && block.made.cuts === cuts ? block.made.blocks : [block],
  );
  const lengths = flat.map(({ length }) => length);
  const widths = flat.map(({ width }) => width);
  return cuts === 'across'
    ? { length: sum(lengths), width: Math.max(...widths), made: { cuts, blocks: flat } }
    : { length: Math.max(...lengths), width: sum(widths), made: { cuts, blocks: flat } };
}

/**
 * How a block is cut from a box. What is left over is parted off in as few cuts
 * and as large remnants as there can be. The block must fit, and no part of it
 * needs a cut longer than the limit.
 */
export function cutFromBox(block: Block, box: Box, limits: Limits): Part {
  const { firstCuts } = box;
  const part = new Cutter(limits).cut(block, box.length, box.width, firstCuts);
  // Where no first cut of that direction is needed, the box is one strip of its whole breadth.
  if (part.kind === 'lay' || firstCuts.includes(part.cuts)) return part;
  const extent = part.cuts === 'along' ? box.length : box.width;
  return {
    kind: 'split',
    cuts: part.cuts === 'along' ? 'across' : 'along',
    parts: [{ extent, part }],
  };
}

const EITHER: readonly Rolling[] = ['along', 'across'];

/** Cuts blocks from larger rectangles. */
class Cutter {
  readonly #limits: Limits;
  /** The same block comes from the same size of rectangle again and again. */
  readonly #known = new Map<Block, Map<string, Part>>();

  constructor(limits: Limits) {
    this.#limits = limits;
  }

  /** @param mayRun how the first cut may run */
  cut(block: Block, fromLength: number, fromWidth: number, mayRun: readonly Rolling[]): Part {
    const { length, width, made } = block;
    const reach = this.#limits.longestCut + this.#limits.kerf;
    const cuts = 'cuts' in made ? made.cuts : undefined;
    const runsAlong =
      fromWidth > width && fromLength <= reach && (cuts !== 'across' || mayRun.includes('along'));
    const runsAcross =
      fromLength > length && fromWidth <= reach && (cuts !== 'along' || mayRun.includes('across'));
    // A rest beyond the last of parallel blocks needs no cut of its own kind before them.
    const trimAlong = runsAlong && cuts !== 'along';
    const trimAcross = runsAcross && cuts !== 'across';
    if (trimAlong || trimAcross) {
      const along =
        trimAlong &&
        (!trimAcross || (fromWidth - width) * fromLength > (fromLength - length) * fromWidth);
      return along
        ? split('along', [{ extent: width, part: this.#inner(block, fromLength, width) }])
        : split('across', [{ extent: length, part: this.#inner(block, length, fromWidth) }]);
    }
    if (!('cuts' in made)) return { kind: 'lay', piece: made.piece, turned: made.turned };
    return split(
      made.cuts,
      made.blocks.map((block) =>
        made.cuts === 'across'
          ? { extent: block.length, part: this.#inner(block, block.length, fromWidth) }
          : { extent: block.width, part: this.#inner(block, fromLength, block.width) },
      ),
    );
  }

  #inner(block: Block, fromLength: number, fromWidth: number): Part {
    const sizes = this.#known.get(block) ?? new Map<string, Part>();
    this.#known.set(block, sizes);
    const size = `${fromLength} ${fromWidth}`;
    const known = sizes.get(size);
    if (known !== undefined) return known;
    const part = this.cut(block, fromLength, fromWidth, EITHER);
    sizes.set(size, part);
    return part;
  }
}

function split(cuts: Rolling, parts: readonly Slice[]): Part {
  return { kind: 'split', cuts, parts };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
