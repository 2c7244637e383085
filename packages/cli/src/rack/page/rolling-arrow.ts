import type { Box, LineMark, Point, PolygonMark } from '../../drawing/drawing.js';
import { INK } from '../../drawing/ink.js';
import type { Rolled } from '../../order/order.js';

// Millimetres of paper.
const LONGEST = 24;
/** So that both heads can be told apart beside a narrow strip. */
const SHORTEST = 5;
const HEAD = 1.6;
const STROKE = 0.3;

type ArrowMark = LineMark | PolygonMark;

/**
 * An arrow with two heads beside an outline, the way it was rolled: below it where it was
 * rolled along its length, at its right where across.
 *
 * @param room how far beside the outline there is room for it
 */
export function rollingArrow(box: Box, rolled: Rolled, room: number): readonly ArrowMark[] {
  const isAlong = rolled === 'along';
  const side = isAlong ? box.width : box.height;
  const half = Math.max(SHORTEST, Math.min(LONGEST, side)) / 2;
  const middle = (isAlong ? box.x : box.y) + side / 2;
  const beside = (isAlong ? box.y + box.height : box.x + box.width) + room / 2;
  const at = (along: number, across: number): Point =>
    isAlong ? { x: middle + along, y: beside + across } : { x: beside + across, y: middle + along };
  const headAt = (end: number): ArrowMark => ({
    kind: 'polygon',
    role: 'rolling',
    points: [
      at(end, 0),
      at(end - Math.sign(end) * HEAD, HEAD / 2),
      at(end - Math.sign(end) * HEAD, -HEAD / 2),
    ],
    fill: INK.text,
  });
  const shaft: ArrowMark = {
    kind: 'line',
    role: 'rolling',
    points: [at(-half, 0), at(half, 0)],
    stroke: INK.text,
    strokeWidth: STROKE,
  };
  return [shaft, headAt(-half), headAt(half)];
}

/** The box around a part of an arrow. */
export function extentOf({ points }: ArrowMark): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
