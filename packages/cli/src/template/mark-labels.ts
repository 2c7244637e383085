import type { Strip } from '@stripwright/strip-geometry';
import type { Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { spreadLabels } from '../drawing/spread-labels.js';
import { tag, tagWidth, words } from '../strip-drawing/tag.js';
import { LABEL_TOP, MOST_LABELS, PAGE, PITCH, STRIP_TOP, TIE, TYPE } from './page-format.js';
import type { RunningMark } from './running-marks.js';
import { labelEdge, type Window } from './window.js';

const AFTER_TAG = 1.4;
const AFTER_READING = 1.6;

/** How wide the columns of the labels are: tags, readings, words. */
export interface LabelColumns {
  readonly tag: number;
  readonly reading: number;
  readonly words: number;
  readonly width: number;
}

/** Columns that hold all the labels of a strip, so that they are alike on all of its pages. */
export function labelColumns(marks: readonly RunningMark[]): LabelColumns {
  const widest = (widths: readonly number[]) => Math.max(0, ...widths);
  const tags = widest(marks.map((mark) => (mark.tag ? tagWidth(mark.tag.label) : 0)));
  const reading = widest(marks.map((mark) => textWidth(mark.reading, true))) * TYPE.body;
  const own = widest(marks.map((mark) => textWidth(mark.words))) * TYPE.body;
  const before = tags === 0 ? 0 : tags + AFTER_TAG;
  return { tag: before, reading, words: own, width: before + reading + AFTER_READING + own };
}

export interface DrawnLabels {
  readonly marks: readonly Mark[];
  /** How far down the page they reach. */
  readonly foot: number;
}

/**
 * Labels right of the strip for the marks between the joins of a page, each tied to its
 * place, spread down the page where they would touch. More than a page holds are left out,
 * which only marks nearer to each other than a tenth of a millimetre come to.
 */
export function drawMarkLabels(
  strip: Strip,
  window: Window,
  all: readonly RunningMark[],
  columns: LabelColumns,
): DrawnLabels {
  const { from, to } = window.along;
  const isLast = to >= strip.length;
  const marks = all
    .filter(({ along }) => along >= from && (along < to || isLast))
    .slice(0, MOST_LABELS);
  const centres = spreadLabels(
    marks.map(({ along }) => STRIP_TOP + along - from),
    PITCH,
    LABEL_TOP,
    PAGE.height,
  );
  const edge = labelEdge(strip, window);
  const left = edge + TIE;
  const drawn = marks.flatMap((mark, index): readonly Mark[] => {
    const place = STRIP_TOP + mark.along - from;
    const centre = centres[index] ?? place;
    const top = centre - (LINE_HEIGHT * TYPE.body) / 2;
    const { label, tagged } = mark.tag ?? {};
    const reading = left + columns.tag;
    return [
      ...(mark.reading === '' ? [] : [tieOf(edge, place, left, centre)]),
      ...(label === undefined || tagged === undefined
        ? []
        : tag(`strip-${tagged.of}`, label, tagged, { x: left + tagWidth(label) / 2, y: centre })),
      ...(mark.reading === ''
        ? []
        : [words('reading', mark.reading, { x: reading, y: top }, TYPE.body, { bold: true })]),
      words(
        'mark',
        mark.words,
        { x: reading + columns.reading + AFTER_READING, y: top },
        TYPE.body,
      ),
    ];
  });
  return { marks: drawn, foot: (centres.at(-1) ?? 0) + PITCH / 2 };
}

function tieOf(edge: number, place: number, left: number, centre: number): Mark {
  const points = [
    { x: edge, y: place },
    { x: edge + 0.8, y: place },
    { x: left - 0.4, y: centre },
  ];
  return { kind: 'line', role: 'tie', points, stroke: INK.soft, strokeWidth: 0.2 };
}
