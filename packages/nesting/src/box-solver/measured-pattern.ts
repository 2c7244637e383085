import type { Box } from '../pattern/box.js';
import { keptValue } from '../pattern/kept-value.js';
import { type Limits, mayRest } from '../pattern/limits.js';
import type { Part, Pattern } from '../pattern/part.js';
import type { KeepRule } from '../problem.js';

/** A pattern with its pieces counted and its remnants valued as the cuts leave them. */
export interface MeasuredPattern {
  readonly pattern: Pattern;
  /**
   * True where every cut keeps to the limits and every part fits, each piece
   * trimmed in one direction at most; stages are not looked at.
   */
  readonly legal: boolean;
}

/**
 * Walks through a way of cutting a box.
 * @param stockClass index of the box
 */
export function measuredPattern(
  part: Part,
  stockClass: number,
  box: Box,
  limits: Limits,
  rule?: KeepRule,
): MeasuredPattern {
  const { kerf, longestCut, narrowest } = limits;
  const sizes = new Map(box.lays.map((lay) => [layKey(lay.piece, lay.turned), lay]));
  const copies = new Map<number, number>();
  let kept = 0;
  let legal = true;

  /** One cut, `near` from the edge of a rectangle `extent` wide square to it. */
  function cut(extent: number, near: number, cutLength: number): void {
    legal &&=
      cutLength - kerf <= longestCut && near - kerf >= narrowest && mayRest(extent - near, limits);
  }
  function remnant(length: number, width: number): void {
    if (length > kerf && width > kerf) kept += keptValue(length - kerf, width - kerf, rule);
  }
  function lay(piece: number, turned: boolean, length: number, width: number): void {
    const size = sizes.get(layKey(piece, turned));
    const both = size !== undefined && size.length < length && size.width < width;
    if (size === undefined || size.length > length || size.width > width || both) {
      legal = false;
      return;
    }
    copies.set(piece, (copies.get(piece) ?? 0) + 1);
    if (size.length < length) cut(length, size.length, width);
    if (size.width < width) cut(width, size.width, length);
    remnant(length - size.length, width);
    remnant(length, width - size.width);
  }
  function walk(part: Part, length: number, width: number): void {
    if (part.kind === 'lay') {
      lay(part.piece, part.turned, length, width);
      return;
    }
    const across = part.cuts === 'across';
    let rest = across ? length : width;
    for (const { extent, part: inner } of part.parts) {
      if (extent !== rest) cut(rest, extent, across ? width : length);
      if (across) walk(inner, extent, width);
      else walk(inner, length, extent);
      rest -= extent;
    }
    legal &&= rest >= 0;
    if (across) remnant(rest, width);
    else remnant(length, rest);
  }

  walk(part, box.length, box.width);
  const counts = [...copies].sort((a, b) => a[0] - b[0]);
  return { pattern: { stockClass, part, counts, kept }, legal };
}

function layKey(piece: number, turned: boolean): number {
  return 2 * piece + Number(turned);
}
