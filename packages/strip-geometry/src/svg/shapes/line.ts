import { lengthOrZero, type ShapeReader } from './shape-reader.js';

/** A `line`: never closed. */
export const readLine: ShapeReader = (element, viewport) => {
  const at = (x: string, y: string) => ({
    x: lengthOrZero(element, x, 'across', viewport),
    y: lengthOrZero(element, y, 'down', viewport),
  });
  return [{ pieces: [{ kind: 'line', from: at('x1', 'y1'), to: at('x2', 'y2') }], closed: false }];
};
