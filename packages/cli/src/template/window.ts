import type { Strip } from '@stripwright/strip-geometry';
import type { Box, Point } from '../drawing/drawing.js';
import { OVERLAP, STRIP_LEFT, STRIP_TOP } from './page-format.js';
import type { Tile } from './tiles.js';

/** Which part of a strip a page shows. */
export interface Window {
  /** From the square end. */
  readonly along: Tile;
  /** From the cutting edge. */
  readonly across: Tile;
  /** How many pages lie before it along the strip, and across it. */
  readonly row: number;
  readonly column: number;
}

/** What of the page lies between its joins. */
export function shownBox({ along, across }: Window): Box {
  return {
    x: STRIP_LEFT,
    y: STRIP_TOP,
    width: across.to - across.from,
    height: along.to - along.from,
  };
}

/** What of the page may be drawn on: past a join the strip goes on a little. */
export function drawnBox({ length, width }: Strip, window: Window): Box {
  const { along, across } = window;
  const box = shownBox(window);
  const left = across.from > 0 ? STRIP_LEFT : 1;
  const right = across.to < width ? OVERLAP : 1;
  const above = along.from > 0 ? OVERLAP : 1;
  const below = along.to < length ? OVERLAP : 1;
  return {
    x: box.x - left,
    y: box.y - above,
    width: left + box.width + right,
    height: above + box.height + below,
  };
}

/**
 * From the flat pattern to the page: the square end above, the cutting edge to the left. So seen
 * the strip shows the outside of the cutter, as the flat pattern does, turned by a quarter.
 */
export function toPage({ width }: Strip, { along, across }: Window): (point: Point) => Point {
  return ({ x, y }) => ({
    x: STRIP_LEFT + (width - y) - across.from,
    y: STRIP_TOP + x - along.from,
  });
}

/** Where the ties of the labels begin: at the right of all that is drawn of the strip. */
export function labelEdge({ width }: Strip, window: Window): number {
  const box = shownBox(window);
  return box.x + box.width + (window.across.to < width ? OVERLAP : 0);
}
