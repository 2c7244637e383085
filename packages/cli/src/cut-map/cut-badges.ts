import type { Box, Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { BASELINE_DROP, LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import type { CutMap } from './cut-map.js';
import { TYPE, type Unit } from './paper.js';

type Cut = CutMap['cuts'][number];

/** A cut with its number in the order of cutting, from 1. */
export interface NumberedCut extends Cut {
  readonly number: number;
}

export interface CutBadges {
  readonly marks: readonly Mark[];
  /** Cuts that found no room for their number. */
  readonly leftOut: readonly NumberedCut[];
}

const SIZE = TYPE.least;
/** Beside the number, in multiples of the font size. */
const SIDE = 0.18;
/** Clear of the ends of the cut, in millimetres of paper. */
const INSET = 0.15;
/** Places tried along a cut. */
const MOST_PLACES = 40;

/** How large a badge is, in millimetres of paper. */
export function badgeSize(number: number): { readonly width: number; readonly height: number } {
  return {
    width: (textWidth(String(number), true) + 2 * SIDE) * SIZE,
    height: LINE_HEIGHT * SIZE,
  };
}

/**
 * A dark badge on every cut but the first ones, which have flags: its number in the order
 * of cutting, at the first place from the cut's start where it covers no label, no other
 * badge and no other cut.
 *
 * @param taken what the labels on the sheet cover
 */
export function cutBadges(
  { cuts, stock }: Pick<CutMap, 'cuts' | 'stock'>,
  taken: readonly Box[],
  unit: Unit,
): CutBadges {
  const lines = cuts.map(lineBox);
  const whole = { x: 0, y: -stock.width, width: stock.length, height: stock.width };
  const covered = [...taken];
  const leftOut: NumberedCut[] = [];
  const marks = cuts.flatMap((cut, index): readonly Mark[] => {
    if (cut.stage === 1) return [];
    const numbered = { ...cut, number: index + 1 };
    const places = placesAlong(numbered, whole, unit);
    const reach = places.reduce<Box | undefined>(
      (sum, place) => (sum === undefined ? place : union(sum, place)),
      undefined,
    );
    const near = (box: Box): boolean => reach !== undefined && meets(reach, box);
    // A badge may cover its own line and no other's.
    const inTheWay = [
      ...covered.filter(near),
      ...lines.filter((line, i) => i !== index && near(line)),
    ];
    const place = places.find((box) => !inTheWay.some((other) => meets(box, other)));
    if (place === undefined) {
      leftOut.push(numbered);
      return [];
    }
    covered.push(place);
    return drawBadge(numbered.number, place, unit);
  });
  return { marks, leftOut };
}

/** Where a badge may lie, from the start of the cut on. */
function placesAlong(cut: NumberedCut, whole: Box, unit: Unit): readonly Box[] {
  const size = badgeSize(cut.number);
  const [width, height] = [size.width * unit, size.height * unit];
  const isLevel = cut.y1 === cut.y2;
  const own = isLevel ? width : height;
  const room = (isLevel ? cut.x2 - cut.x1 : cut.y2 - cut.y1) - 2 * INSET * unit - own;
  if (room < 0) return [];
  const count = Math.min(MOST_PLACES, Math.floor(room / (own / 3)));
  return Array.from({ length: count + 1 }, (_, index) => {
    const along = INSET * unit + own / 2 + (count === 0 ? room / 2 : (room * index) / count);
    const centre = isLevel
      ? { x: cut.x1 + along, y: -cut.y1 }
      : { x: cut.x1, y: -(cut.y1 + along) };
    // Trims lie so near the edge that a badge would stand out over it.
    const x = Math.min(Math.max(centre.x - width / 2, whole.x), whole.x + whole.width - width);
    const y = Math.min(Math.max(centre.y - height / 2, whole.y), whole.y + whole.height - height);
    return { x, y, width, height };
  });
}

function drawBadge(number: number, box: Box, unit: Unit): readonly Mark[] {
  const size = SIZE * unit;
  return [
    { kind: 'rect', role: 'cut-badge', box, rounding: 0.3 * size, fill: INK.laterCut },
    textMark({
      role: 'cut-number',
      text: String(number),
      at: { x: box.x + box.width / 2, y: box.y + box.height / 2 + BASELINE_DROP * size },
      size,
      anchor: 'middle',
      bold: true,
      colour: INK.paper,
      room: box,
    }),
  ];
}

/** A line as a box without thickness. */
function lineBox({ x1, y1, x2, y2 }: Cut): Box {
  return { x: x1, y: -y2, width: x2 - x1, height: y2 - y1 };
}

function union(one: Box, other: Box): Box {
  const x = Math.min(one.x, other.x);
  const y = Math.min(one.y, other.y);
  return {
    x,
    y,
    width: Math.max(one.x + one.width, other.x + other.width) - x,
    height: Math.max(one.y + one.height, other.y + other.height) - y,
  };
}

/** Whether two boxes share anything; lines are boxes too. */
function meets(one: Box, other: Box): boolean {
  return (
    one.x < other.x + other.width + SLACK &&
    other.x < one.x + one.width + SLACK &&
    one.y < other.y + other.height + SLACK &&
    other.y < one.y + one.height + SLACK
  );
}
const SLACK = 0.01;
