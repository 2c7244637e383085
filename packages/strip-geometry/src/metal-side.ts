import { BendError } from './bend-rules/bend-error.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import { printLength } from './wording.js';

/**
 * Which side of the drawn line the metal lies on. `outside`: to the right of
 * the travel, so that the line is the inside face of a cutter. `inside`: to
 * the left, so that the line of an anticlockwise outline is its outer mould
 * line. `both`: the line is the middle of the metal.
 */
export type MetalSide = 'outside' | 'inside' | 'both';

/**
 * How far the inner face of a turn lies inside the drawn line, millimetres: the
 * thickness where the path turns toward the metal, nothing where it turns away
 * from it, half where the line is in the middle. The turn is above 0 to the left.
 */
export function depthOfInnerFace(turn: number, metal: MetalSide, { thickness }: BendRule): number {
  if (metal === 'both') {
    return thickness / 2;
  }
  return turn > 0 === (metal === 'inside') ? thickness : 0;
}

/**
 * How far the neutral line lies outside the drawn line of a formed curve,
 * millimetres, below 0 if it lies inside. `place` begins the message of the error.
 *
 * @throws BendError where the drawn radius leaves the inner face none.
 */
export function depthOfNeutralLine(
  radius: number,
  turn: number,
  metal: MetalSide,
  rule: BendRule,
  place: () => string,
): number {
  const inner = depthOfInnerFace(turn, metal, rule);
  if (radius < inner) {
    const face = metal === 'both' ? 'in the middle of' : 'on the outer face of';
    const message =
      `${place()} has a radius of ${printLength(radius)} ${face} metal ` +
      `${printLength(rule.thickness)} thick; it needs at least ${printLength(inner)}.`;
    throw new BendError('too tight', message);
  }
  return rule.neutralDepth(radius - inner) - inner;
}
