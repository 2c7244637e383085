import { StripError } from '../strip-error.js';
import { printLength } from '../wording.js';

/**
 * Rounds distances from one end to the nearest mark of a rule, such as 1/32 in.
 * Each distance is rounded by itself, never the steps between, so errors do not
 * add up: every result is within half a mark of the true distance. Halves go up.
 * Millimetres, or any one unit.
 *
 * @throws StripError if the mark is not above 0 or a distance is not finite.
 */
export function roundMarks(positions: readonly number[], mark: number): number[] {
  if (!Number.isFinite(mark) || mark <= 0) {
    throw new StripError('mark', `The mark must be above 0 mm; got ${printLength(mark)}.`);
  }
  return positions.map((position, index) => {
    if (!Number.isFinite(position)) {
      const message = `Position ${index + 1} must be a finite number; got ${position}.`;
      throw new StripError('positions', message);
    }
    return Math.round(position / mark) * mark;
  });
}
