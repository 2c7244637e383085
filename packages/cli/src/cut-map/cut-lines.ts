import type { LineMark, Pen } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import type { CutMap } from './cut-map.js';
import type { Unit } from './paper.js';

/** A trim of the edges is a thin line, a first cut a heavy one, a second dashed, later ones dotted, ever finer. */
export function cutPen(stage: number, unit: Unit): Pen {
  switch (stage) {
    case 0:
      return { stroke: INK.laterCut, strokeWidth: 0.25 * unit };
    case 1:
      return { stroke: INK.firstCut, strokeWidth: 0.6 * unit };
    case 2:
      return {
        stroke: INK.laterCut,
        strokeWidth: 0.4 * unit,
        dashes: [2.2 * unit, 1.1 * unit],
      };
    case 3:
      return {
        stroke: INK.laterCut,
        strokeWidth: 0.4 * unit,
        dashes: [0.5 * unit, 0.7 * unit],
      };
    default:
      return {
        stroke: INK.laterCut,
        strokeWidth: 0.3 * unit,
        dashes: [0.25 * unit, 0.9 * unit],
      };
  }
}

/** The cuts as lines, the first-stage ones on top. */
export function drawCuts({ cuts }: CutMap, unit: Unit): readonly LineMark[] {
  return [...cuts]
    .sort((one, other) => other.stage - one.stage)
    .map(({ stage, x1, y1, x2, y2 }) => ({
      kind: 'line',
      role: `cut-${stage}`,
      points: [
        { x: x1, y: -y1 },
        { x: x2, y: -y2 },
      ],
      ...cutPen(stage, unit),
    }));
}
