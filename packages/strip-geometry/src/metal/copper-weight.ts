import { INCH } from './inch.js';
import { MetalError } from './metal-error.js';

/**
 * Thickness in inches of sheet copper by ounces a square foot. Source: Copper
 * Development Association, Copper in Architecture, A4050 (from memory); each
 * lies within 0.0001 in of the ounces at a density of 8.94 g a cubic centimetre.
 */
const INCHES: ReadonlyMap<number, number> = new Map([
  [12, 0.0162],
  [16, 0.0216],
  [20, 0.027],
  [24, 0.0323],
  [32, 0.0431],
  [48, 0.0646],
]);

/** The weights of sheet copper that are known, ounces a square foot, ascending. */
export const copperWeights: readonly number[] = [...INCHES.keys()];

/**
 * Thickness in millimetres of sheet copper of so many ounces a square foot.
 *
 * @throws MetalError if the weight is not in the table.
 */
export function copperThickness(ounces: number): number {
  const inches = INCHES.get(ounces);
  if (inches === undefined) {
    const message =
      `The copper weight must be one of ${copperWeights.join(', ')} oz a square foot; ` +
      `got ${ounces}. Give other thicknesses in millimetres or inches.`;
    throw new MetalError('copper weight', message);
  }
  return inches * INCH;
}
