import { FULL_TURN } from '../../angle.js';
import type { DrawnPath } from '../drawn-path.js';
import { lengthOrZero, optionalSize, type ShapeReader } from './shape-reader.js';

/** A `circle`. A radius of 0 draws nothing (SVG 1.1, 9.3). */
export const readCircle: ShapeReader = (element, viewport) => {
  const radius = optionalSize(element, 'r', 'either', viewport) ?? 0;
  const x = lengthOrZero(element, 'cx', 'across', viewport);
  const y = lengthOrZero(element, 'cy', 'down', viewport);
  return wholeEllipse(x, y, radius, radius);
};

/** An `ellipse`. A radius that is not given is as the other one (SVG 2, 10.4). */
export const readEllipse: ShapeReader = (element, viewport) => {
  const across = optionalSize(element, 'rx', 'across', viewport);
  const down = optionalSize(element, 'ry', 'down', viewport);
  const x = lengthOrZero(element, 'cx', 'across', viewport);
  const y = lengthOrZero(element, 'cy', 'down', viewport);
  return wholeEllipse(x, y, across ?? down ?? 0, down ?? across ?? 0);
};

function wholeEllipse(
  x: number,
  y: number,
  radiusX: number,
  radiusY: number,
): readonly DrawnPath[] {
  if (radiusX === 0 || radiusY === 0) {
    return [];
  }
  const start = { x: x + radiusX, y };
  const whole = {
    kind: 'ellipse',
    from: start,
    to: start,
    centre: { x, y },
    u: { x: radiusX, y: 0 },
    v: { x: 0, y: radiusY },
    start: 0,
    sweep: FULL_TURN,
  } as const;
  return [{ pieces: [whole], closed: true }];
}
