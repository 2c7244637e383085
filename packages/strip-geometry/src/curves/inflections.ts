import type { Segment } from '../outline.js';
import { bendPolynomial } from './curvature.js';
import { quadraticRoots } from './polynomial-roots.js';

/**
 * Parameters strictly between 0 and 1 where the segment changes from bending
 * left to bending right or back, ascending. Of all kinds only a cubic can.
 */
export function inflections(segment: Segment): number[] {
  if (segment.kind !== 'cubic') {
    return [];
  }
  const [constant, linear, square] = bendPolynomial(segment);
  if (linear * linear === 4 * constant * square) {
    // It stands still for a moment, but goes on bending the same way.
    return [];
  }
  return quadraticRoots(square, linear, constant)
    .filter((parameter) => parameter > 0 && parameter < 1)
    .sort((a, b) => a - b);
}
