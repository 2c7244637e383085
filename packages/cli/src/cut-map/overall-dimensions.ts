import type { Box, LineMark, Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { ASCENT, DESCENT, LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import type { CutMap } from './cut-map.js';
import { TYPE, type Unit } from './paper.js';
import { railAlong } from './rail.js';

const LINE = 2.4;
const GAP = 0.8;

/** How much paper an overall dimension takes, counted from where it begins. */
export const OVERALL_DEPTH = LINE + GAP + LINE_HEIGHT * TYPE.body;

/**
 * The stock's length below it and its width to the left of it.
 *
 * @param out paper to leave free between the stock and each dimension
 */
export function overallDimensions(
  stock: CutMap['stock'],
  out: { readonly bottom: number; readonly left: number },
  unit: Unit,
  page: Box,
  print: (mm: number) => string,
): readonly Mark[] {
  const size = TYPE.body * unit;
  const below = (out.bottom + LINE) * unit;
  const aside = (out.left + LINE) * unit;
  const common = { role: 'overall', size, room: page, anchor: 'middle', bold: true } as const;
  return [
    ...line('bottom', stock, stock.length, out.bottom, unit),
    ...line('left', stock, stock.width, out.left, unit),
    textMark({
      ...common,
      text: print(stock.length),
      at: { x: stock.length / 2, y: below + GAP * unit + ASCENT * size },
    }),
    textMark({
      ...common,
      text: print(stock.width),
      upright: true,
      at: { x: -(aside + GAP * unit + DESCENT * size), y: -stock.width / 2 },
    }),
  ];
}

/** How far the printed width stands out above and below a stock that is narrower than it. */
export function overallOverhang(
  stock: CutMap['stock'],
  unit: Unit,
  print: (mm: number) => string,
): number {
  const width = textWidth(print(stock.width), true) * TYPE.body;
  return Math.max(0, (width - stock.width / unit) / 2);
}

function line(
  side: 'bottom' | 'left',
  stock: CutMap['stock'],
  extent: number,
  out: number,
  unit: Unit,
): readonly LineMark[] {
  const rail = railAlong(side, stock);
  const at = (out + LINE) * unit;
  const tick = 0.7 * unit;
  const thin = (from: [number, number], to: [number, number]): LineMark => ({
    kind: 'line',
    points: [rail.at(...from), rail.at(...to)],
    stroke: INK.soft,
    strokeWidth: 0.25 * unit,
  });
  return [
    thin([0, at], [extent, at]),
    ...[0, extent].flatMap((edge) => [
      thin([edge, (out === 0 ? 0.8 : out + 0.4) * unit], [edge, at + tick]),
      thin([edge - tick, at - tick], [edge + tick, at + tick]),
    ]),
  ];
}
