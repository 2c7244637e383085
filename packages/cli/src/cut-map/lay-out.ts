import { type Area, type Block, NOTHING, paragraph, stack } from '../drawing/block.js';
import { boxOf } from '../drawing/box.js';
import type { Box, Drawing, Mark, RectMark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { checkMap } from './check-map.js';
import { cutBadges } from './cut-badges.js';
import { drawCuts } from './cut-lines.js';
import type { CutMap } from './cut-map.js';
import { cutNumbers } from './cut-numbers.js';
import { describe, titleOf } from './describe.js';
import { drawHeading } from './heading.js';
import { drawKey } from './key.js';
import { drawLegendTable, legendHeight, legendRows } from './legend-table.js';
import { CAUTION, dustNote, leftOutNote, lettersNote, offcutNote } from './notes.js';
import { overallDimensions } from './overall-dimensions.js';
import { type PagePlan, planPage, usualFoot } from './page-plan.js';
import { MARGIN, PAPER, TYPE } from './paper.js';
import { drawPieces } from './pieces.js';
import { railAlong } from './rail.js';
import { drawRemnants } from './remnants.js';
import { drawScaleBar } from './scale-bar.js';
import { stripDimensions } from './strip-dimensions.js';
import { readStrips, type Strips } from './strips.js';
import { drawUnnumbered } from './unnumbered.js';
import { drawUntoldCuts, type Telling } from './untold-cuts.js';

/** Between the blocks below the sheet, in millimetres of paper. */
const GAP = 2.6;
/** How often a page is planned anew because its foot came out higher than was thought. */
const MOST_PLANS = 8;

/** So that the plans of a page come to an end, in millimetres of paper. */
const CLEAR = 0.5;

/** Lays a cut map out on its page. @throws {CutMapError} if the map contradicts itself */
export function layOut(map: CutMap): Drawing {
  checkMap(map);
  const strips = readStrips(map);
  const told = fitted(map, strips, 'places');
  if (told.excess === 0) return told.drawing;
  const short = fitted(map, strips, 'numbers');
  return (short.excess < told.excess ? short : told).drawing;
}

/** Plans the page until it fits the paper: what finds no room on the sheet takes room from it. */
function fitted(map: CutMap, strips: Strips, telling: Telling): LaidOut {
  let foot = usualFoot(map, legendHeight(legendRows(map)));
  let laid = layOutAt(planPage(map, strips, foot), map, strips, telling);
  for (let plans = 1; plans < MOST_PLANS && laid.excess > 0; plans++) {
    foot = Math.max(foot + laid.excess, laid.foot) + CLEAR;
    laid = layOutAt(planPage(map, strips, foot), map, strips, telling);
  }
  return laid;
}

interface LaidOut {
  readonly drawing: Drawing;
  /** What stands below the sheet's dimensions, in millimetres of paper. */
  readonly foot: number;
  /** How much higher than the paper the page is, at the width of the paper; 0 where it fits. */
  readonly excess: number;
}

function layOutAt(plan: PagePlan, map: CutMap, strips: Strips, telling: Telling): LaidOut {
  const { stock, printLength } = map;
  const { unit, sheetArea, column } = plan;

  const remnants = drawRemnants(map, unit);
  const pieces = drawPieces(map, unit);
  const labels = [...remnants.labels, ...pieces.labels];
  const badges = cutBadges(map, labels.flatMap(coveredBy), unit);
  const along = strips.cutsRun === 'x';
  const widthsRail = railAlong(along ? 'left' : 'bottom', stock);
  const numbersRail = railAlong(along ? 'right' : 'top', stock);
  const widths = stripDimensions(strips, widthsRail, unit, sheetArea, printLength);
  const numbers = cutNumbers(strips, numbersRail, unit, sheetArea, printLength);
  const overall = overallDimensions(stock, plan.overallOut, unit, sheetArea, printLength);
  const unflagged = numbers.leftOut.flatMap((number) => {
    const cut = map.cuts[number - 1];
    return cut === undefined ? [] : [{ ...cut, number }];
  });
  const untold = [...unflagged, ...badges.leftOut];

  const heading = drawHeading(map, { ...column, top: plan.headTop, unit });
  const foot = stack({ ...column, top: plan.footTop, unit }, GAP * unit, [
    (area) => drawScaleBar(printLength, area),
    (area) => drawKey(map, strips, area),
    (area) => drawLegendTable(legendRows(map), area),
    note(lettersNote(strips)),
    note(dustNote(map)),
    note(offcutNote(map)),
    (area) => drawUnnumbered(pieces.unnumbered, strips, telling, printLength, area),
    (area) => drawUntoldCuts(untold, strips.start, telling, printLength, area),
    note(leftOutNote(widths.leftOut)),
    note(CAUTION, 'caution'),
  ]);

  const top = plan.headTop - MARGIN * unit;
  const height = plan.footTop + foot.height + MARGIN * unit - top;
  const page = { x: sheetArea.x, y: top, width: sheetArea.width, height };
  const drawing: Drawing = {
    title: titleOf(map),
    description: describe(map, strips),
    page,
    hatches: remnants.hatches,
    layers: [
      { name: 'paper', marks: [{ kind: 'rect', box: page, fill: INK.paper }] },
      { name: 'ground', marks: [ground(boxOf({ x: 0, y: 0, ...stock }))] },
      { name: 'remnants', marks: remnants.shapes },
      { name: 'pieces', marks: pieces.shapes },
      { name: 'cuts', marks: drawCuts(map, unit) },
      { name: 'edge', marks: [edge(boxOf({ x: 0, y: 0, ...stock }), unit)] },
      { name: 'labels', marks: [...labels, ...badges.marks] },
      { name: 'dimensions', marks: [...overall, ...widths.marks, ...numbers.marks] },
      { name: 'heading', marks: heading.marks },
      { name: 'foot', marks: foot.marks },
    ],
  };
  const printed = (page.height / page.width) * PAPER.width;
  return { drawing, foot: foot.height / unit, excess: Math.max(0, printed - PAPER.height) };
}

/** What a mark of a label covers. */
function coveredBy(mark: Mark): readonly Box[] {
  return mark.kind === 'text' || mark.kind === 'rect' ? [mark.box] : [];
}

const note =
  (text: string | undefined, role = 'note') =>
  (area: Area): Block =>
    text === undefined ? NOTHING : paragraph(area, role, text, TYPE.small);

const ground = (box: Box): RectMark => ({ kind: 'rect', box, fill: INK.paper });

const edge = (box: Box, unit: number): RectMark => ({
  kind: 'rect',
  role: 'stock',
  box,
  stroke: INK.text,
  strokeWidth: 0.4 * unit,
});
