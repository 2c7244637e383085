/** The inside radius in thicknesses above which a bend counts as gentle. */
export const GENTLE = 5;

/**
 * Depth of the neutral line below the inside face of a curve: half the
 * thickness where the curve is gentle, `tightDepth` where it is tighter.
 *
 * Five thicknesses is where the factor of DIN 6935, k = 0.65 + 0.5 log10(r / s)
 * of half the thickness, reaches 1 (from memory).
 */
export function depthInCurve(insideRadius: number, thickness: number, tightDepth: number): number {
  return insideRadius > GENTLE * thickness ? thickness / 2 : tightDepth;
}
