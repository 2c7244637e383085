import type { Piece } from '../drawn-path.js';
import { lengthOrZero, optionalSize, type ShapeReader } from './shape-reader.js';

/**
 * A `rect`, its corners rounded by `rx` and `ry`: one stands in for the other,
 * and neither is more than half the side (SVG 1.1, 9.2). A width or height of
 * 0 draws nothing.
 */
export const readRect: ShapeReader = (element, viewport) => {
  const width = optionalSize(element, 'width', 'across', viewport) ?? 0;
  const height = optionalSize(element, 'height', 'down', viewport) ?? 0;
  if (width === 0 || height === 0) {
    return [];
  }
  const left = lengthOrZero(element, 'x', 'across', viewport);
  const top = lengthOrZero(element, 'y', 'down', viewport);
  const stated = {
    x: optionalSize(element, 'rx', 'across', viewport),
    y: optionalSize(element, 'ry', 'down', viewport),
  };
  const radiusX = Math.min(stated.x ?? stated.y ?? 0, width / 2);
  const radiusY = Math.min(stated.y ?? stated.x ?? 0, height / 2);
  const round = radiusX > 0 && radiusY > 0;
  const [insetX, insetY] = round ? [radiusX, radiusY] : [0, 0];
  const [right, bottom] = [left + width, top + height];

  const quarter = (centreX: number, centreY: number, number: number): Piece => {
    const at = (turns: number) => ({
      x: centreX + radiusX * ([1, 0, -1, 0][turns % 4] ?? 0),
      y: centreY + radiusY * ([0, 1, 0, -1][turns % 4] ?? 0),
    });
    return {
      kind: 'ellipse',
      from: at(number),
      to: at(number + 1),
      centre: { x: centreX, y: centreY },
      u: { x: radiusX, y: 0 },
      v: { x: 0, y: radiusY },
      start: (number * Math.PI) / 2,
      sweep: Math.PI / 2,
    };
  };
  const side = (x1: number, y1: number, x2: number, y2: number): Piece => {
    return { kind: 'line', from: { x: x1, y: y1 }, to: { x: x2, y: y2 } };
  };
  const sides = [
    side(left + insetX, top, right - insetX, top),
    side(right, top + insetY, right, bottom - insetY),
    side(right - insetX, bottom, left + insetX, bottom),
    side(left, bottom - insetY, left, top + insetY),
  ];
  const corners = round
    ? [
        quarter(right - radiusX, top + radiusY, 3),
        quarter(right - radiusX, bottom - radiusY, 0),
        quarter(left + radiusX, bottom - radiusY, 1),
        quarter(left + radiusX, top + radiusY, 2),
      ]
    : [];
  const pieces = sides.flatMap((piece, index) => [piece, ...corners.slice(index, index + 1)]);
  return [{ pieces, closed: true }];
};
