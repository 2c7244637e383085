import { flatPattern, type NotchOptions } from '@stripwright/strip-geometry';
import type { Drawing } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { oneLine } from '../drawing/measure-text.js';
import { printLength, type Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';
import { CHECK_HEIGHT, CHECK_WIDTH, drawCheckMarks } from './check-marks.js';
import { edgeNames } from './edge-names.js';
import { joinName, sideJoinName } from './joins.js';
import { drawMarkLabels, type LabelColumns, labelColumns } from './mark-labels.js';
import { drawNotes } from './notes.js';
import { drawOutline, type ShapeToDraw } from './outline-picture.js';
import {
  GAP,
  MOST_LABELS,
  OVERLAP,
  PAGE,
  STRIP_LEFT,
  TIE,
  TO_END,
  TO_JOIN,
} from './page-format.js';
import { drawHeading } from './page-heading.js';
import { type RunningMark, runningMarks } from './running-marks.js';
import { drawStripOnPage } from './strip-on-page.js';
import { type Tile, tilesAcross, tilesOf } from './tiles.js';
import { drawnBox, labelEdge, type Window } from './window.js';

/** A strip to draw at true size, and what is said of it. */
export interface TemplateToDraw {
  /** Its number on the cut maps. */
  readonly number: number;
  readonly name: string;
  readonly shape: ShapeToDraw;
  /** As the plan file has it. */
  readonly entry: PlanFileStrip;
  readonly notches: NotchOptions;
  readonly rule: Rule;
}

/** What the right column must hold at least. */
const LEAST_RIGHT = CHECK_WIDTH;
/** Notes beside the check square need this much. */
const NOTES = 38;

interface PagePlan {
  readonly template: TemplateToDraw;
  readonly marks: readonly RunningMark[];
  readonly columns: LabelColumns;
  readonly rows: readonly Tile[];
  readonly columnsAcross: readonly Tile[];
}

/** The pages of one template, each at most TRUE_PAGE: along the strip first, then across it. */
export function templatePages(template: TemplateToDraw): readonly Drawing[] {
  const { strip } = template.shape;
  const marks = runningMarks(strip, template.entry, template.rule);
  const columns = labelColumns(marks);
  const plan: PagePlan = {
    template,
    marks,
    columns,
    rows: tilesOf(strip.length, {
      toJoin: TO_JOIN,
      toEnd: TO_END,
      labels: marks.map(({ along }) => along),
      mostLabels: MOST_LABELS,
    }),
    columnsAcross: tilesAcross(
      strip.width,
      PAGE.width - STRIP_LEFT - TIE - columns.width - GAP - LEAST_RIGHT,
      OVERLAP,
    ),
  };
  const windows = plan.columnsAcross.flatMap((across, column) =>
    plan.rows.map((along, row): Window => ({ along, across, row, column })),
  );
  return windows.map((window, index) => drawPage(plan, window, index, windows.length));
}

function drawPage(plan: PagePlan, window: Window, index: number, of: number): Drawing {
  const { template, marks, columns } = plan;
  const { strip } = template.shape;
  const name = `Template ${template.number}: ${oneLine(template.name)}`;
  const pattern = flatPattern(strip, template.notches);
  const labels = drawMarkLabels(strip, window, marks, columns);
  const drawn = drawnBox(strip, window);
  const left = labelEdge(strip, window) + TIE + columns.width + GAP;
  const head = drawHeading(name, `Page ${index + 1} of ${of}`, left);
  const right = drawRight(plan, window, index, { left, top: head.height + GAP / 2 });
  const foot = Math.max(labels.foot, drawn.y + drawn.height, right.foot);
  const height = Math.min(PAGE.height, Math.ceil(foot + 0.5));
  const page = { x: 0, y: 0, width: PAGE.width, height };
  const pageName = of === 1 ? '' : `, page ${index + 1} of ${of}`;
  const { bends, curves, length, width } = strip;
  return {
    title: `${name}${pageName}`,
    description:
      `The flat pattern of a strip ${printLength(roundedTo(length, template.rule), template.rule)} long and ` +
      `${printLength(roundedTo(width, template.rule), template.rule)} wide at true size, with ${bends.length} bends ` +
      `and ${curves.length} curves${pageName}, a check square of 50 mm and a check bar of 2 in. ` +
      'Print at 100 %.',
    page,
    hatches: [],
    layers: [
      { name: 'paper', marks: [{ kind: 'rect', box: page, fill: INK.paper }] },
      { name: 'flat-strip', marks: drawStripOnPage(strip, pattern, window) },
      { name: 'edges', marks: edgeNames(strip, window, columns) },
      { name: 'labels', marks: labels.marks },
      { name: 'heading', marks: head.marks },
      { name: 'shape', marks: right.marks },
    ],
  };
}

const roundedTo = (length: number, { mark }: Rule): number =>
  Math.ceil(length / mark - 1e-6) * mark;

/** What lies right of the strip: the outline on the first page, notes, the check marks. */
function drawRight(plan: PagePlan, window: Window, index: number, { left, top: head }: Place) {
  const width = PAGE.width - left;
  const beside = width - CHECK_WIDTH - GAP >= NOTES;
  const joining = joiningWords(plan, window);
  const notesAt = (top: number) =>
    drawNotes(
      {
        left: beside ? left + CHECK_WIDTH + GAP : left,
        top,
        width: beside ? width - CHECK_WIDTH - GAP : width,
        unit: 1,
      },
      joining,
    );
  const notesHeight = notesAt(0).height;
  const below = beside ? Math.max(CHECK_HEIGHT, notesHeight) : CHECK_HEIGHT + GAP + notesHeight;
  const room = { x: left, y: head, width, height: PAGE.height - 1 - head - GAP - below };
  const outline = index === 0 ? drawOutline(plan.template.shape, room) : { marks: [], height: 0 };
  const top = head + outline.height + (index === 0 ? GAP : 0);
  const notes = notesAt(top);
  const checkTop = beside ? top : top + notes.height + GAP;
  return {
    marks: [...outline.marks, ...notes.marks, ...drawCheckMarks({ x: left + 0.2, y: checkTop })],
    foot: top + below,
  };
}

/** How the pages are laid together. */
function joiningWords({ rows, columnsAcross }: PagePlan, window: Window): string | undefined {
  const { row, column } = window;
  const page = (r: number, c: number) => c * rows.length + r + 1;
  const own = [
    ...(row > 0 ? [[joinName(row), page(row - 1, column)] as const] : []),
    ...(column > 0 ? [[sideJoinName(column), page(row, column - 1)] as const] : []),
  ];
  if (rows.length * columnsAcross.length === 1) return undefined;
  if (own.length === 0) {
    return 'The pages overlap. Cut each further page at its first join and lay it on the same join here.';
  }
  return own
    .map(([name, before]) => `Cut this page at ${name} and lay it on ${name} of page ${before}.`)
    .join(' ');
}

interface Place {
  readonly left: number;
  readonly top: number;
}
