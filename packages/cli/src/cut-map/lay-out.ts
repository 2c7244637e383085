import { type Area, type Block, NOTHING, paragraph, stack } from '../drawing/block.js';
import { boxOf } from '../drawing/box.js';
import type { Box, Drawing, RectMark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { checkMap } from './check-map.js';
import { drawCuts } from './cut-lines.js';
import type { CutMap } from './cut-map.js';
import { cutNumbers } from './cut-numbers.js';
import { describe, titleOf } from './describe.js';
import { drawHeading } from './heading.js';
import { drawKey } from './key.js';
import { drawLegendTable, legendHeight, legendRows } from './legend-table.js';
import { CAUTION, dustNote, leftOutNote, offcutNote } from './notes.js';
import { overallDimensions } from './overall-dimensions.js';
import { planPage } from './page-plan.js';
import { MARGIN, TYPE } from './paper.js';
import { drawPieces } from './pieces.js';
import { railAlong } from './rail.js';
import { drawRemnants } from './remnants.js';
import { drawScaleBar } from './scale-bar.js';
import { stripDimensions } from './strip-dimensions.js';
import { readStrips } from './strips.js';
import { drawUnnumbered } from './unnumbered.js';

/** Between the blocks below the sheet, in millimetres of paper. */
const GAP = 2.6;

/** Lays a cut map out on its page. @throws {CutMapError} if the map contradicts itself */
export function layOut(map: CutMap): Drawing {
  checkMap(map);
  const { stock, printLength } = map;
  const strips = readStrips(map);
  const rows = legendRows(map);
  const plan = planPage(map, strips, legendHeight(rows));
  const { unit, sheetArea, column } = plan;

  const remnants = drawRemnants(map, unit);
  const pieces = drawPieces(map, unit);
  const along = strips.cutsRun === 'x';
  const widthsRail = railAlong(along ? 'left' : 'bottom', stock);
  const numbersRail = railAlong(along ? 'right' : 'top', stock);
  const widths = stripDimensions(strips, widthsRail, unit, sheetArea, printLength);
  const numbers = cutNumbers(strips, numbersRail, unit, sheetArea, printLength);
  const overall = overallDimensions(stock, plan.overallOut, unit, sheetArea, printLength);

  const heading = drawHeading(map, { ...column, top: plan.headTop, unit });
  const foot = stack({ ...column, top: plan.footTop, unit }, GAP * unit, [
    (area) => drawScaleBar(printLength, area),
    (area) => drawKey(map, strips, area),
    (area) => drawLegendTable(rows, area),
    note(dustNote(map)),
    note(offcutNote(map)),
    (area) => drawUnnumbered(pieces.unnumbered, strips, printLength, area),
    note(leftOutNote({ widths: widths.leftOut, numbers: numbers.leftOut })),
    note(CAUTION, 'caution'),
  ]);

  const top = plan.headTop - MARGIN * unit;
  const height = plan.footTop + foot.height + MARGIN * unit - top;
  const page = { x: sheetArea.x, y: top, width: sheetArea.width, height };
  return {
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
      { name: 'labels', marks: [...remnants.labels, ...pieces.labels] },
      { name: 'dimensions', marks: [...overall, ...widths.marks, ...numbers.marks] },
      { name: 'heading', marks: heading.marks },
      { name: 'foot', marks: foot.marks },
    ],
  };
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
