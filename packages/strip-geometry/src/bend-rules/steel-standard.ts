import { toRadians } from '../angle.js';
import type { BendRule } from './bend-rule.js';
import { checkAngle, checkLength } from './check-bend.js';
import { GENTLE } from './gentle-curve.js';

/** The metal and the tool that the steel standard's rule describes. Millimetres. */
export interface SteelStandard {
  /** Thickness of the metal, 0 or more. */
  readonly thickness: number;
  /** Radius of the inside face of a sharp bend, 0 or more. */
  readonly insideRadius: number;
}

/**
 * The factor k of DIN 6935, the part of half the thickness at which the neutral
 * line lies: 0.65 + 0.5 log10(r / s) for an inside radius r up to 5 s, and 1
 * above (from memory).
 *
 * Below r = 0.05 s the formula falls under 0, which would put the neutral line
 * outside the metal; the factor is then 0, so that a bend takes up no less than
 * its inner face is long. Metal of no thickness has the factor 1.
 */
export function steelFactor(insideRadius: number, thickness: number): number {
  if (insideRadius > GENTLE * thickness || thickness === 0) {
    return 1;
  }
  return Math.max(0, 0.65 + 0.5 * Math.log10(insideRadius / thickness));
}

/**
 * The bend rule of the German standard for bending flat steel: a bend through A
 * degrees takes up A * (pi / 180) * (r + k s / 2), with `steelFactor` for k. The
 * factor falls as the bend gets sharper, so no factor need be known; one and
 * the same formula serves for bends and for formed curves.
 *
 * Source: DIN 6935 (from memory).
 *
 * @throws BendError if a length is negative or not finite; and from `allowance`
 * for an angle outside 0 to 180.
 */
export function steelStandard({ thickness, insideRadius }: SteelStandard): BendRule {
  checkLength('thickness', thickness);
  checkLength('insideRadius', insideRadius);
  const depth = (radius: number) => (steelFactor(radius, thickness) * thickness) / 2;
  return {
    name: 'steel standard',
    thickness,
    insideRadius,
    allowance(angle) {
      checkAngle(angle);
      return toRadians(angle) * (insideRadius + depth(insideRadius));
    },
    neutralDepth(radius) {
      checkLength('insideRadius', radius);
      return depth(radius);
    },
  };
}
