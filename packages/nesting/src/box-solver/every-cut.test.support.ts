import type { Box } from '../pattern/box.js';
import { keptValue } from '../pattern/kept-value.js';
import type { Limits } from '../pattern/limits.js';
import type { KeepRule, Rolling } from '../problem.js';

/** What may be got out of a box. */
export interface EveryCut {
  readonly box: Box;
  readonly limits: Limits;
  readonly values: readonly number[];
  readonly coin: number;
  readonly rule?: KeepRule | undefined;
  /** The last stage, without a trim to size; 'free' where there is none. */
  readonly stages: number | 'free';
}

/**
 * The most that guillotine cuts get out of a box, or that it is worth as a remnant, by trying every cut of every
 * rectangle at every tick. In net ticks, so that kerfs are reckoned the way a saw
 * takes them. It shares nothing with the pricers.
 */
export function bestOfEveryCut({ box, limits, values, coin, rule, stages }: EveryCut): number {
  const { kerf, longestCut, narrowest } = limits;
  const known = new Map<string, number>();
  const net = box.lays.map(({ piece, length, width }) => ({
    piece,
    length: length - kerf,
    width: width - kerf,
  }));

  /** What one cut makes of an extent; a kerf may leave no second part. */
  function partings(extent: number): [near: number, far: number][] {
    const found: [number, number][] = [];
    for (let near = narrowest; near < extent; near++) {
      const far = extent - near - kerf;
      if (far <= 0 || far >= narrowest) found.push([near, far]);
    }
    return found;
  }
  function remnant(length: number, width: number): number {
    return length <= 0 || width <= 0 ? 0 : coin * keptValue(length, width, rule);
  }
  function piece(length: number, width: number): number {
    const same = net.filter((lay) => lay.length === length && lay.width === width);
    return Math.max(0, ...same.map(({ piece }) => values[piece]));
  }
  /** What cuts of one direction get out of a rectangle, each part worth what it is told. */
  function divided(
    cuts: Rolling,
    length: number,
    width: number,
    near: (length: number, width: number) => number,
    far = near,
  ): number {
    if ((cuts === 'across' ? width : length) > longestCut) return 0;
    const worths = partings(cuts === 'across' ? length : width).map(([a, b]) =>
      cuts === 'across' ? near(a, width) + far(b, width) : near(length, a) + far(length, b),
    );
    return Math.max(0, ...worths);
  }
  function part(length: number, width: number, cuts: Rolling, stage: number): number {
    if (length <= 0 || width <= 0) return 0;
    const key = `${length} ${width} ${cuts} ${stages === 'free' ? '' : stage}`;
    let worth = known.get(key);
    if (worth === undefined) {
      worth = Math.max(remnant(length, width), cutUp(length, width, cuts, stage));
      known.set(key, worth);
    }
    return worth;
  }
  function cutUp(length: number, width: number, cuts: Rolling, stage: number): number {
    const square = cuts === 'along' ? 'across' : 'along';
    if (stages === 'free') {
      return Math.max(
        piece(length, width),
        divided(cuts, length, width, (a, b) => part(a, b, cuts, stage)),
        divided(square, length, width, (a, b) => part(a, b, square, stage + 1)),
      );
    }
    // The parts of one stage stand in a row with one rest, so each cut frees one of them.
    return Math.max(
      next(length, width, square, stage),
      divided(
        cuts,
        length,
        width,
        (a, b) => next(a, b, square, stage),
        (a, b) => part(a, b, cuts, stage),
      ),
    );
  }
  /** What a part that a stage freed is worth, cut square to it or not. */
  function next(length: number, width: number, square: Rolling, stage: number): number {
    const asItIs = Math.max(piece(length, width), remnant(length, width));
    // The last trim frees one piece, and nothing is cut from what it trimmed.
    return stage === stages
      ? Math.max(asItIs, divided(square, length, width, piece, remnant))
      : Math.max(asItIs, part(length, width, square, stage + 1));
  }
  const worths = box.firstCuts.map((cuts) => cutUp(box.length - kerf, box.width - kerf, cuts, 1));
  return Math.max(remnant(box.length - kerf, box.width - kerf), ...worths);
}
