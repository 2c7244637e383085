import { type Area, type Block, paragraph, stack } from '../drawing/block.js';
import type { Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT } from '../drawing/measure-text.js';
import { CUTTING_CAUTIONS } from '../report/cautions.js';
import { DASHES } from '../strip-drawing/pattern-marks.js';
import { TYPE } from './page-format.js';

const SAMPLE = 9;
const LINE = LINE_HEIGHT * TYPE.small;

type Dashes = readonly number[] | 'none';

const KEY: readonly (readonly [dashes: Dashes, words: string])[] = [
  [DASHES.in, 'bend in, toward the cookie; light number'],
  [DASHES.out, 'bend out, away from it; dark number'],
  [DASHES.hem, 'fold line of the edge'],
  [DASHES.seam, 'line of the seam'],
];

const READING =
  'Seen from outside the cutter. Readings run from the square end. c1, c2 ... are curves, formed ' +
  'over the tinted stretch, each half through its own degrees. Fold to the degrees told here: ' +
  'by them the ends meet.';

/** What the lines mean, how pages are joined, and what to take care of. */
export function drawNotes(area: Area, joining: string | undefined): Block {
  return stack(area, 1.2, [
    drawKey,
    (place) => paragraph(place, 'note', READING, TYPE.small),
    ...(joining === undefined
      ? []
      : [(place: Area) => paragraph(place, 'joining', joining, TYPE.small)]),
    (place) => paragraph(place, 'caution', CUTTING_CAUTIONS.join(' '), TYPE.small),
  ]);
}

function drawKey({ left, top, width, unit }: Area): Block {
  let foot = top;
  const marks = KEY.flatMap(([dashes, text]): readonly Mark[] => {
    const own = { left: left + SAMPLE + 1.2, top: foot, width: width - SAMPLE - 1.2, unit };
    const block = paragraph(own, 'key', text, TYPE.small);
    const middle = foot + LINE / 2;
    foot += block.height;
    const points = [
      { x: left, y: middle },
      { x: left + SAMPLE, y: middle },
    ];
    const pen = { stroke: INK.text, strokeWidth: 0.35 };
    return [
      { kind: 'line', points, ...pen, ...(dashes === 'none' ? {} : { dashes }) },
      ...block.marks,
    ];
  });
  return { marks, height: foot - top };
}
