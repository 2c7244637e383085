import { keptValue } from '../pattern/kept-value.js';
import type { LayPart, Part } from '../pattern/part.js';
import type { Rolling } from '../problem.js';
import type { BoxCase } from './random-box.test.support.js';

/** What comes of a pattern: copies of every piece, and coins for its remnants. */
export interface Replayed {
  readonly counts: readonly (readonly [number, number])[];
  readonly kept: number;
}

/**
 * Cuts a pattern out of a box in net ticks, cut by cut, each checked against the
 * limits and the stages.
 * @throws Error at the first cut that may not be
 */
export function replayed(
  part: Part,
  { box, limits, rule }: BoxCase,
  stages: number | 'free',
): Replayed {
  const { kerf, longestCut, narrowest } = limits;
  const copies = new Map<number, number>();
  let kept = 0;

  function refuse(why: string): never {
    throw new Error(why);
  }
  /** Cuts `near` off an extent and returns what is left beyond it. */
  function cut(
    extent: number,
    near: number,
    cutLength: number,
    stage: number,
    trim: boolean,
  ): number {
    if (stages !== 'free' && stage > stages + Number(trim)) refuse(`a cut of stage ${stage}`);
    if (cutLength > longestCut) refuse(`a cut of ${cutLength} ticks`);
    if (near < narrowest) refuse(`a strip of ${near} ticks`);
    const far = Math.max(0, extent - near - kerf);
    if (far > 0 && far < narrowest) refuse(`a strip of ${far} ticks beyond`);
    return far;
  }
  function leave(length: number, width: number): void {
    if (length > 0 && width > 0) kept += keptValue(length, width, rule);
  }
  function place(lay: LayPart, length: number, width: number, stage: number): void {
    const size = box.lays.find(({ piece, turned }) => piece === lay.piece && turned === lay.turned);
    if (size === undefined) refuse(`piece ${lay.piece} does not lie so`);
    const [l, w] = [size.length - kerf, size.width - kerf];
    if (l > length || w > width) refuse(`a piece of ${l} x ${w} in ${length} x ${width}`);
    if (l < length && w < width) refuse('a piece trimmed both ways at once');
    if (l < length) leave(cut(length, l, width, stage + 1, true), width);
    if (w < width) leave(length, cut(width, w, length, stage + 1, true));
    copies.set(lay.piece, (copies.get(lay.piece) ?? 0) + 1);
  }
  function walk(
    part: Part,
    length: number,
    width: number,
    cuts: Rolling,
    stage: number,
    nested = true,
  ): void {
    if (part.kind === 'lay') {
      place(part, length, width, stage);
      return;
    }
    const own = part.cuts === cuts ? stage : stage + 1;
    if (stages !== 'free' && nested && own === stage) refuse('a row within a row');
    const across = part.cuts === 'across';
    let rest = across ? length : width;
    for (const { extent, part: inner } of part.parts) {
      const near = extent - kerf;
      if (near > rest) refuse(`${near} ticks of ${rest}`);
      const beyond = near === rest ? 0 : cut(rest, near, across ? width : length, own, false);
      if (across) walk(inner, near, width, part.cuts, own);
      else walk(inner, length, near, part.cuts, own);
      rest = beyond;
    }
    if (across) leave(rest, width);
    else leave(length, rest);
  }

  if (part.kind === 'split' && !box.firstCuts.includes(part.cuts)) refuse('a wrong first cut');
  const first = part.kind === 'split' ? part.cuts : box.firstCuts[0];
  walk(part, box.length - kerf, box.width - kerf, first, 1, false);
  return { counts: [...copies].sort((a, b) => a[0] - b[0]), kept };
}
