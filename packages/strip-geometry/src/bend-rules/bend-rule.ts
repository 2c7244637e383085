/**
 * How metal of some thickness goes round a bend. One file for each rule.
 * Millimetres and degrees bent through.
 */
export interface BendRule {
  readonly name: string;
  /** Thickness of the metal, 0 where the rule ignores it. */
  readonly thickness: number;
  /** Radius of the inside face of a sharp bend. */
  readonly insideRadius: number;
  /** Length of metal that a bend of `angle` degrees takes up (bend allowance). */
  allowance(angle: number): number;
  /** Distance of the neutral line from the inside face of a formed curve. */
  neutralDepth(insideRadius: number): number;
}
