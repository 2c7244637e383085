import type { Box } from './drawing.js';

/** The box that lies `by` outside another; inside it for a negative `by`. */
export function grown(box: Box, by: number): Box {
  return {
    x: box.x - by,
    y: box.y - by,
    width: Math.max(0, box.width + 2 * by),
    height: Math.max(0, box.height + 2 * by),
  };
}

/** The smallest box around some others; `boxes` holds at least one. */
export function around(boxes: readonly Box[]): Box {
  const x = Math.min(...boxes.map((box) => box.x));
  const y = Math.min(...boxes.map((box) => box.y));
  return {
    x,
    y,
    width: Math.max(...boxes.map((box) => box.x + box.width)) - x,
    height: Math.max(...boxes.map((box) => box.y + box.height)) - y,
  };
}

/** What two boxes share; of no size if they lie apart. */
export function shared(one: Box, other: Box): Box {
  const x = Math.max(one.x, other.x);
  const y = Math.max(one.y, other.y);
  const right = Math.min(one.x + one.width, other.x + other.width);
  const foot = Math.min(one.y + one.height, other.y + other.height);
  return { x, y, width: Math.max(0, right - x), height: Math.max(0, foot - y) };
}

/** A rectangle of the cut map (y up) as a box of the drawing (y down). */
export function boxOf(rectangle: {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}): Box {
  const { x, y, length, width } = rectangle;
  return { x, y: -(y + width), width: length, height: width };
}
