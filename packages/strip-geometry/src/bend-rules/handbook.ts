import type { BendRule } from './bend-rule.js';
import { checkAngle, checkChoice, checkLength } from './check-bend.js';
import { depthInCurve } from './gentle-curve.js';

/** How hard the metal is, in the three classes of the handbook. */
export type HandbookMetal = 'soft' | 'half hard' | 'hard';

/** The metal and the tool that the handbook's constants describe. Millimetres. */
export interface Handbook {
  /** Thickness of the metal, 0 or more. */
  readonly thickness: number;
  /** Radius of the inside face of a sharp bend, 0 or more. */
  readonly insideRadius: number;
  /**
   * `soft`: soft brass, soft copper. `half hard`: half-hard copper and brass,
   * soft steel (so tinplate), aluminium. `hard`: bronze, hard copper, cold-rolled and
   * spring steel.
   */
  readonly metal: HandbookMetal;
}

/** Thicknesses that a square bend takes up beside its radius. */
const AT_90: Readonly<Record<HandbookMetal, number>> = {
  soft: 0.55,
  'half hard': 0.64,
  hard: 0.71,
};

/** The classes of metal, from soft to hard. */
export const handbookMetals: readonly HandbookMetal[] = ['soft', 'half hard', 'hard'];

/**
 * The handbook's constants: a square bend takes up 0.55 T + 1.57 R in soft
 * metal, 0.64 T + 1.57 R in half-hard metal and 0.71 T + 1.57 R in hard metal;
 * other angles in proportion to the angle bent through. The printed 1.57 is used as it is.
 *
 * In a gentle formed curve the neutral line lies in the middle of the metal, in
 * a tighter one at the depth whose quarter circle is the constant: 2 / pi of it.
 *
 * Source: Machinery's Handbook, bending sheet metal, lengths of straight stock
 * (from memory).
 *
 * @throws BendError if a length is negative or not finite or the metal is unknown; and from `allowance`
 * for an angle outside 0 to 180.
 */
export function handbook({ thickness, insideRadius, metal }: Handbook): BendRule {
  checkLength('thickness', thickness);
  checkLength('insideRadius', insideRadius);
  checkChoice('metal', handbookMetals, metal);
  const constant = AT_90[metal];
  return {
    name: 'handbook',
    thickness,
    insideRadius,
    allowance(angle) {
      checkAngle(angle);
      return (angle / 90) * (constant * thickness + 1.57 * insideRadius);
    },
    neutralDepth(radius) {
      checkLength('insideRadius', radius);
      return depthInCurve(radius, thickness, (2 / Math.PI) * constant * thickness);
    },
  };
}
