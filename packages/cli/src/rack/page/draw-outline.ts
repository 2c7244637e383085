import { around, grown } from '../../drawing/box.js';
import type { Box, Drawing, Hatch, Mark } from '../../drawing/drawing.js';
import { INK, tint } from '../../drawing/ink.js';
import { BASELINE_DROP, LINE_HEIGHT, textWidth } from '../../drawing/measure-text.js';
import { textMark } from '../../drawing/text-mark.js';
import type { RackStock } from '../rack.js';
import { extentOf, rollingArrow } from './rolling-arrow.js';

// Millimetres of paper.
const AROUND = 0.8;
const STROKE = 0.35;
/** Beside the outline, for the arrow. */
const ARROW_ROOM = 5;
const MARK_SIZES = [7, 5, 4, 3] as const;
const CLEAR = 1;

/** What a drawing of one thing says in words. */
export interface OutlineWords {
  readonly title: string;
  readonly description: string;
}

/**
 * The outline of a thing on the rack with its mark, where that fits, and an arrow beside
 * it the way it was rolled.
 *
 * @param scale how many times smaller than life
 */
export function drawOutline(stock: RackStock, scale: number, words: OutlineWords): Drawing {
  const { mark, rolled, promised } = stock;
  const box = { x: 0, y: 0, width: stock.length / scale, height: stock.width / scale };
  const hatches = promised > 0 ? [promisedHatch(mark)] : [];
  const fill = promised > 0 ? `url(#${hatchId(mark)})` : tint(0);
  const outline: Mark = {
    kind: 'rect',
    role: 'outline',
    box,
    fill,
    stroke: INK.text,
    strokeWidth: STROKE,
  };
  const rolling = rolled === undefined ? [] : rollingArrow(box, rolled, ARROW_ROOM);
  return {
    ...words,
    page: grown(around([box, ...rolling.map(extentOf)]), AROUND),
    hatches,
    layers: [
      { name: 'outline', marks: [outline] },
      { name: 'rolling', marks: rolling },
      { name: 'mark', marks: markIn(box, mark, promised > 0) },
    ],
  };
}

const hatchId = (mark: string) => `promised-${mark}`;

function promisedHatch(mark: string): Hatch {
  const pen = { stroke: INK.hatch, strokeWidth: 0.25, ground: INK.paper };
  return { id: hatchId(mark), spacing: 1.8, crossed: false, ...pen };
}

function markIn(box: Box, mark: string, onPlate: boolean): readonly Mark[] {
  const size = MARK_SIZES.find(
    (each) =>
      textWidth(mark, true) * each + 2 * CLEAR <= box.width &&
      LINE_HEIGHT * each + 2 * CLEAR <= box.height,
  );
  if (size === undefined) return [];
  const text = textMark({
    role: 'mark',
    text: mark,
    at: { x: box.width / 2, y: box.height / 2 + BASELINE_DROP * size },
    size,
    room: box,
    anchor: 'middle',
    bold: true,
  });
  return [
    ...(onPlate ? [{ kind: 'rect', role: 'plate', box: text.box, fill: INK.paper } as const] : []),
    text,
  ];
}
