import { bounds, type Refold, refold, type Strip } from '@stripwright/strip-geometry';
import { paragraph, stack } from '../drawing/block.js';
import type { Box, Drawing, Point } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT } from '../drawing/measure-text.js';
import { printLength, printSize, printThickness, type Rule } from '../length/print-length.js';
import { ticksUp } from '../length/ticks.js';
import { refoldText } from '../report/refold-text.js';
import { words } from '../strip-drawing/tag.js';
import { drawShape } from './draw-shape.js';
import { drawStrip } from './draw-strip.js';
import { type Exhibit, sizeWords, TINPLATE } from './exhibit.js';
import { drawFigures } from './figures.js';
import { drawKey } from './key.js';
import { placesOn } from './places.js';

/** A4 lying, inside margins of 10 mm (ISO 216). */
const WIDTH = 277;
const MARGIN = 6;
const TITLE = 7;
const LEAD = 3.8;
const BODY = 3;
const SHAPE = { width: 128, height: 122 } as const;
const GAP = 5;

/** One cutter: its shape, its figures beside it, and its flat strip below. */
export function drawCard(exhibit: Exhibit, rule: Rule): Drawing {
  const { outline, strip, title, summary } = exhibit;
  const places = placesOn(outline, strip);
  const inner = WIDTH - 2 * MARGIN;
  const size = sizeWords(exhibit, rule);
  const blank = blankSize(strip, rule);

  const area = { left: MARGIN, width: SHAPE.width, unit: 1 };
  const below = MARGIN + LINE_HEIGHT * TITLE;
  const lead = stack({ ...area, top: below }, 0, [
    (place) => paragraph(place, 'sizes', size, LEAD),
    (place) => paragraph(place, 'summary', summary, BODY),
  ]);
  const heading = [
    words('title', title, { x: MARGIN, y: MARGIN }, TITLE, { bold: true }),
    ...lead.marks,
  ];
  const top = below + lead.height;
  const room: Box = { x: MARGIN, y: top, ...SHAPE };
  const shape = drawShape(outline, strip, places, room);
  const right = MARGIN + SHAPE.width + GAP;
  const folded = refold(strip, rule.mark);
  const facts = drawFacts(exhibit, folded, rule, { x: right, y: below });
  const figuresTop = below + facts.height + GAP;
  const figures = drawFigures(strip, folded, rule, { left: right, top: figuresTop });
  const middle = Math.max(top + SHAPE.height, figuresTop + figures.height + GAP);
  const flat = drawStrip(strip, rule, { x: MARGIN, y: middle, width: inner });
  const foot = middle + flat.height + 2;
  const key = drawKey(rule, { left: MARGIN, top: foot, width: inner, unit: 1 });
  const height = foot + key.height + MARGIN;
  const page = { x: 0, y: 0, width: WIDTH, height };
  return {
    title: `${title}, ${size}`,
    description:
      `${title}, ${size}: the shape with ${strip.bends.length} bends and ${strip.curves.length} ` +
      `curves, and its flat strip, ${blank}, with the same numbers and letters.`,
    page,
    hatches: [],
    layers: [
      { name: 'paper', marks: [{ kind: 'rect', box: page, fill: INK.paper }] },
      { name: 'heading', marks: [...heading, ...facts.marks] },
      { name: 'shape', marks: shape.marks },
      { name: 'figures', marks: figures.marks },
      { name: 'flat-strip', marks: flat.marks },
      { name: 'key', marks: key.marks },
    ],
  };
}

/** The size of the cookie, of the strip, what it is laid out for, and how near it folds. */
function drawFacts({ outline, strip }: Exhibit, folded: Refold, rule: Rule, { x, y }: Point) {
  const { across, high } = bounds(outline);
  const length = (millimetres: number) => printLength(toMark(millimetres, rule), rule);
  const { depth, hem, tab } = strip;
  const [thickness, radius] = [TINPLATE.thickness, TINPLATE.insideRadius].map((size) =>
    printThickness(size, rule.units),
  );
  const lines = [
    [`Strip ${blankSize(strip, rule)}`, LEAD],
    [`Cookie ${printSize(toMark(across, rule), toMark(high, rule), rule)}`, BODY],
    [`${length(depth)} deep, hem ${length(hem)}, tab ${length(tab)}`, BODY],
    [`Tinplate ${thickness} thick, bends of ${radius} inside radius`, BODY],
  ] as const;
  let top = y;
  const marks = lines.map(([text, size]) => {
    const mark = words('fact', text, { x, y: top }, size, { bold: size === LEAD });
    top += LINE_HEIGHT * size;
    return mark;
  });
  const width = WIDTH - MARGIN - x;
  const check = refoldText({ refold: folded }, rule) ?? '';
  const checked = paragraph({ left: x, top, width, unit: 1 }, 'fact', check, BODY);
  return { marks: [...marks, ...checked.marks], height: top + checked.height - y };
}

const toMark = (length: number, { mark }: Rule): number => Math.round(length / mark) * mark;

/** `281 x 31 mm`: rounded up to the rule, as blanks are. */
function blankSize({ length, width }: Strip, rule: Rule): string {
  const up = (size: number): number => ticksUp(size, rule.mark) * rule.mark;
  return printSize(up(length), up(width), rule);
}
