import type { Strip } from '@stripwright/strip-geometry';
import type { Mark } from '../drawing/drawing.js';
import { BASELINE_DROP, LINE_HEIGHT, shorten } from '../drawing/measure-text.js';
import { textMark } from '../drawing/text-mark.js';
import { words } from '../strip-drawing/tag.js';
import type { LabelColumns } from './mark-labels.js';
import { STRIP_LEFT, STRIP_TOP, TIE, TYPE } from './page-format.js';
import { labelEdge, shownBox, type Window } from './window.js';

const SIZE = TYPE.small;
const LINE = LINE_HEIGHT * SIZE;

/** Which edge is which, and the square end. */
export function edgeNames(strip: Strip, window: Window, columns: LabelColumns): readonly Mark[] {
  const { y, height } = shownBox(window);
  const top = STRIP_TOP - 2.2 - LINE;
  const middle = (STRIP_LEFT - 1) / 2 + BASELINE_DROP * SIZE;
  const beside = labelEdge(strip, window) + TIE;
  // Clear of the line of a join.
  const aside = window.column === 0 ? 0 : STRIP_LEFT + 1.5;
  const hem = shorten(`${strip.edge.name} on this side`, columns.width / SIZE);
  const cutting = shorten('cutting edge', height / SIZE);
  return [
    ...(window.row === 0 ? [words('square-end', 'square end', { x: aside, y: top }, SIZE)] : []),
    ...(window.across.to >= strip.width
      ? [words('hem-name', hem, { x: beside, y: top }, SIZE)]
      : []),
    ...(window.column === 0 && cutting !== ''
      ? [
          textMark({
            role: 'edge-name',
            text: cutting,
            at: { x: middle, y: y + height / 2 },
            size: SIZE,
            anchor: 'middle',
            upright: true,
            room: { x: middle - LINE / 2 - BASELINE_DROP * SIZE, y, width: LINE, height },
          }),
        ]
      : []),
  ];
}
