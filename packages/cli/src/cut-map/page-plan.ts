import type { Box } from '../drawing/drawing.js';
import { LINE_HEIGHT } from '../drawing/measure-text.js';
import type { CutMap } from './cut-map.js';
import { cutNumbersDepth } from './cut-numbers.js';
import { HEADING_HEIGHT } from './heading.js';
import { dustNote } from './notes.js';
import { OVERALL_DEPTH, overallOverhang } from './overall-dimensions.js';
import { fitPaper, MARGIN, PAPER, TYPE, type Unit } from './paper.js';
import { stripDimensionsDepth } from './strip-dimensions.js';
import type { Strips } from './strips.js';

/** Scale bar, key, notes and caution as they usually come out, in millimetres of paper. */
const USUAL_FOOT = 36;
/** A line more in the foot, with the room above it. */
const LINE_MORE = LINE_HEIGHT * TYPE.small + 0.6;
/** Labels beside the stock may stand this far beyond its corners. */
const CORNER = 4;

/** Where the sheet, the columns of text and the dimensions go. */
export interface PagePlan {
  readonly unit: Unit;
  /** The stock with the paper around it that dimensions and cut numbers use. */
  readonly sheetArea: Box;
  /** Left edge and width of the text above and below. */
  readonly column: { readonly left: number; readonly width: number };
  readonly headTop: number;
  readonly footTop: number;
  /** Paper between the stock and its overall dimensions. */
  readonly overallOut: { readonly left: number; readonly bottom: number };
}

/**
 * Plans the page twice: strips that are too narrow for a line of text at the first plan's unit
 * need wider labels. If none are, the second plan is the first.
 *
 * @param foot the height of what stands below the dimensions, in millimetres of paper
 */
export function planPage(map: CutMap, strips: Strips, foot: number): PagePlan {
  const { unit } = planAt(0, map, strips, foot);
  return planAt(unit, map, strips, foot);
}

/**
 * How high the foot usually comes out, in millimetres of paper.
 *
 * @param tableHeight the legend's
 */
export function usualFoot(map: CutMap, tableHeight: number): number {
  return tableHeight + USUAL_FOOT + unusualLines(map) * LINE_MORE;
}

function planAt(guess: Unit, map: CutMap, strips: Strips, foot: number): PagePlan {
  const { stock, printLength } = map;
  const widths = stripDimensionsDepth(strips, printLength, guess);
  const numbers = cutNumbersDepth(strips, printLength);
  const along = strips.cutsRun === 'x';
  const overallOut = along ? { left: widths, bottom: 0 } : { left: 0, bottom: widths };
  const left = overallOut.left + OVERALL_DEPTH + MARGIN;
  const right = Math.max(along ? numbers : 0, CORNER) + MARGIN;
  const bottom = overallOut.bottom + OVERALL_DEPTH;
  const top = along ? 0 : numbers;

  const words = HEADING_HEIGHT + foot;
  const down = top + bottom + 2 * CORNER + words + 2 * MARGIN;
  const unit = fitPaper(stock, { across: left + right, down });
  const overhang = Math.max(CORNER, overallOverhang(stock, unit, printLength));

  const used = stock.length + (left + right) * unit;
  const width = Math.max(PAPER.width * unit, used);
  const x = -left * unit - (width - used) / 2;
  const y = -stock.width - (top + overhang) * unit;
  const footTop = (bottom + overhang) * unit;
  return {
    unit,
    sheetArea: { x, y, width, height: footTop - y },
    column: { left: x + MARGIN * unit, width: width - 2 * MARGIN * unit },
    headTop: y - HEADING_HEIGHT * unit,
    footTop,
    overallOut,
  };
}

/** Lines of the foot for trims, kerfs and late stages, which few shops have. */
function unusualLines(map: CutMap): number {
  const stages = new Set(map.cuts.map(({ stage }) => stage));
  const keys = [0, 4].filter((stage) => stages.has(stage)).length;
  // Of more than two stages the key says more than that the third cuts trim.
  const words = (map.stages ?? 2) === 2 ? 0 : 1;
  return keys + words + (dustNote(map) === undefined ? 0 : 3);
}
