import {
  type HemStage,
  type MarkedOut,
  markOut,
  notchesOf,
  type Refold,
  refold,
  reliefSnips,
  roundMarks,
  type Seam,
  type Strip,
  USUAL_HEM_STAGE,
} from '@stripwright/strip-geometry';
import { roundMillimetres } from '../length/ticks.js';
import type { Shop } from '../order/order.js';
import type { Cutter } from '../order/strips.js';
import type { PlanFileStrip } from './plan-file.js';
import { stripWarnings } from './strip-warnings.js';

/** Angles in a plan file are rounded to this many parts of a degree, as lengths are of a millimetre. */
const roundDegrees = roundMillimetres;

/** What of a shop a strip is marked out by. */
export type Bench = Pick<Shop, 'rule' | 'metal'>;

/**
 * A strip as its file has it: marked out, with each mark rounded by itself so
 * that errors do not add up, and folded back from those marks.
 */
export function stripEntry(cutter: Cutter, bench: Bench): PlanFileStrip {
  const { family, strip, handwork, part } = cutter;
  const { mark } = bench.rule;
  const marked = markOut(strip, mark);
  const folded = refold(strip, mark);
  const notches = notchesOf(strip, handwork);
  const onMark = (at: number) => roundMillimetres(roundMarks([at], mark)[0] ?? at);
  return {
    outline: family,
    depth: roundMillimetres(strip.depth),
    hem: roundMillimetres(strip.hem),
    tab: roundMillimetres(strip.tab),
    developed: roundMillimetres(strip.developed),
    ...(part === undefined ? {} : { part }),
    edge: edgeEntry(strip, handwork.hemStage ?? USUAL_HEM_STAGE),
    seam: seamEntry(strip.seam, strip.length),
    sizeIs: strip.sizeIs,
    bends: bendEntries(strip, onMark, folded),
    curves: curveEntries(strip, onMark, marked, folded),
    notches: notches.map(({ bend, at, depth, halfAngle, least }) => ({
      bend,
      at: onMark(at),
      depth: roundMillimetres(depth),
      halfAngle: roundDegrees(halfAngle),
      least: roundDegrees(least),
    })),
    snips: reliefSnips(strip, notches, handwork).map(({ curve, at, depth, halfAngle }) => ({
      curve,
      at: onMark(at),
      depth: roundMillimetres(depth),
      halfAngle: roundDegrees(halfAngle),
    })),
    refold: refoldEntry(folded),
    warnings: stripWarnings(cutter, notches, folded, bench),
  };
}

function refoldEntry({
  closureGap,
  largestDeviation,
  atDrawnAngles,
}: Refold): PlanFileStrip['refold'] {
  return {
    closureGap: roundMillimetres(closureGap),
    largestDeviation: roundMillimetres(largestDeviation),
    drawnClosureGap: roundMillimetres(atDrawnAngles.closureGap),
    drawnLargestDeviation: roundMillimetres(atDrawnAngles.largestDeviation),
  };
}

type OnMark = (at: number) => number;

function bendEntries({ bends }: Strip, onMark: OnMark, folded: Refold): PlanFileStrip['bends'] {
  return bends.map(({ number, at, direction, angle }) => {
    const told = folded.folds.find((fold) => fold.number === number)?.told;
    const sense = told?.direction === direction ? 1 : -1;
    return {
      number,
      at: onMark(at),
      direction,
      angle: roundDegrees(angle),
      ...(told === undefined ? {} : { foldTo: roundDegrees(sense * told.angle) }),
    };
  });
}

/** Curves run from mark to mark: beside a bend, from or to the bend's own. */
function curveEntries(
  { curves }: Strip,
  onMark: OnMark,
  { marks }: MarkedOut,
  folded: Refold,
): PlanFileStrip['curves'] {
  return curves.map(({ from, to, radius, direction, angle }, index) => {
    const number = index + 1;
    const start = marks.find(({ curveStarts }) => curveStarts?.number === number);
    const end = marks.find(({ curveEnds }) => curveEnds?.number === number);
    const told = folded.curves.find((curve) => curve.number === number)?.told;
    const even = start?.curveStarts?.even ?? end?.curveEnds?.even;
    return {
      from: roundMillimetres(start?.at ?? onMark(from)),
      to: roundMillimetres(end?.at ?? onMark(to)),
      radius: roundMillimetres(radius),
      direction,
      angle: roundDegrees(angle),
      ...(even === undefined ? {} : { even }),
      ...(told === undefined ? {} : { formTo: told.map(roundDegrees) }),
    };
  });
}

function edgeEntry({ edge, hemFace }: Strip, stage: HemStage): PlanFileStrip['edge'] {
  const { name, foldLines, wire } = edge;
  return {
    kind: name,
    face: hemFace,
    foldLines: foldLines.map(roundMillimetres),
    ...(foldLines.length === 0 ? {} : { stage }),
    ...(wire === 0 ? {} : { wire: roundMillimetres(wire) }),
  };
}

function seamEntry(
  { name, atStart, atEnd, overlap, openHem, lines }: Seam,
  length: number,
): PlanFileStrip['seam'] {
  return {
    kind: name,
    atStart: roundMillimetres(atStart),
    atEnd: roundMillimetres(atEnd),
    overlap: roundMillimetres(overlap),
    openHem: roundMillimetres(openHem),
    lines: lines.map(({ purpose, end, from }) => ({
      purpose,
      at: roundMillimetres(end === 'start' ? from : length - from),
    })),
  };
}
