import { hemAtBend } from '../notches/hem-side.js';
import { leastHalfAngle } from '../notches/least-half-angle.js';
import type { Strip } from '../strip.js';
import { printNumber } from '../wording.js';
import type { CheckedLimits } from './limits.js';
import type { WorkabilityWarning } from './warning.js';

/** Halvings of the range of angles: below a millionth of a degree. */
const HALVINGS = 32;

/** The bends that close the hem so far that only a notch wider than the limit would clear it. */
export function hemFolds(
  { bends, edge, hemFace, bendRule }: Strip,
  { widestNotch, hemStage }: CheckedLimits,
): WorkabilityWarning[] {
  const { insideRadius, thickness } = bendRule;
  const needs = (angle: number) =>
    leastHalfAngle(
      { angle, allowance: bendRule.allowance(angle), insideRadius, thickness },
      edge,
      hemStage,
    );
  const closing = bends.filter(({ direction, angle }) => {
    return hemAtBend(direction, hemFace) === 'closes' && needs(angle) > widestNotch;
  });
  if (closing.length === 0) {
    return [];
  }
  const limit = sharpestWithin(needs, widestNotch);
  return closing.map(({ number, from, to, angle }) => ({
    code: 'hem in a sharp fold',
    place: { on: 'bend', bend: number, from, to },
    measured: angle,
    limit,
    unit: 'degrees',
    source: 'reckoned from the notch that the hem needs; the widest notch is common practice',
    message:
      `Bend ${number} closes the hem through ${printNumber(angle)} degrees; notched ` +
      `${printNumber(widestNotch)} degrees to each side it clears itself up to ` +
      `${printNumber(limit)}. Fold the hem to the other face, or cut it away there.`,
  }));
}

/** The greatest angle whose need, which rises with it, is within the limit. */
function sharpestWithin(needs: (angle: number) => number, limit: number): number {
  let [fits, fails] = [0, 179.999];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const angle = (fits + fails) / 2;
    if (needs(angle) <= limit) {
      fits = angle;
    } else {
      fails = angle;
    }
  }
  return fits;
}
