import type { BendRule } from './bend-rule.js';
import { checkAngle, checkLength } from './check-bend.js';

/**
 * The rule of the bench (common practice): every bend is sharp, the thickness
 * is ignored, and the strip is as long as the outline. In thin tinplate it is
 * short by about the thickness times 2 pi times the depth of the neutral line.
 */
export function zeroThickness(): BendRule {
  return {
    name: 'zero thickness',
    thickness: 0,
    insideRadius: 0,
    allowance(angle) {
      checkAngle(angle);
      return 0;
    },
    neutralDepth(radius) {
      checkLength('insideRadius', radius);
      return 0;
    },
  };
}
