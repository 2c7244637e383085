import type { Box, Point, TextMark } from '../drawing/drawing.js';
import { BASELINE_DROP } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import type { CutMap } from './cut-map.js';

export type Side = 'left' | 'right' | 'bottom' | 'top';

/** The free paper along one edge of the stock, where dimensions and cut numbers stand. */
export interface Rail {
  /**
   * @param along millimetres along the edge, from the stock's lower left corner
   * @param out millimetres away from the stock
   */
  readonly at: (along: number, out: number) => Point;
  /** A line of text that crosses the rail: it begins (or ends) at `out`, centred on `along`. */
  readonly text: (label: RailLabel) => TextMark;
}

export interface RailLabel {
  readonly role: string;
  readonly text: string;
  readonly along: number;
  readonly out: number;
  readonly size: number;
  readonly room: Box;
  readonly bold?: boolean;
  readonly colour?: string;
}

export function railAlong(side: Side, stock: CutMap['stock']): Rail {
  const upright = side === 'bottom' || side === 'top';
  const anchor = side === 'left' || side === 'bottom' ? 'end' : 'start';
  const at = (along: number, out: number): Point => {
    switch (side) {
      case 'left':
        return { x: -out, y: -along };
      case 'right':
        return { x: stock.length + out, y: -along };
      case 'bottom':
        return { x: along, y: out };
      case 'top':
        return { x: along, y: -(stock.width + out) };
    }
  };
  return {
    at,
    text: ({ along, out, ...label }) => {
      const drop = BASELINE_DROP * label.size;
      return textMark({ ...label, at: at(along + (upright ? drop : -drop), out), upright, anchor });
    },
  };
}
