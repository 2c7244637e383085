import { parametric } from '../curves/parametric-curve.js';
import type { Outline, Point } from '../outline.js';
import { lengthOf, parameterOf } from '../segment.js';

/**
 * Points round an outline, `spacing` millimetres apart along it or a little
 * less, from its first point on; the last is one step short of the first.
 */
export function evenlySpaced({ segments }: Outline, spacing: number): Point[] {
  const lengths = segments.map(lengthOf);
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const count = Math.max(Math.ceil(whole / spacing), 3);
  const points: Point[] = [];
  let passed = 0;
  segments.forEach((segment, index) => {
    const length = lengths[index] ?? 0;
    const { at } = parametric(segment);
    const isLast = index === segments.length - 1;
    for (let next = points.length; next < count; next = points.length) {
      const along = (whole * next) / count - passed;
      if (along >= length && !isLast) {
        break;
      }
      points.push(at(parameterOf(segment, along)));
    }
    passed += length;
  });
  return points;
}
