import type { EdgeTreatment } from '../edges/edge-treatment.js';
import type { HemStage } from './hem-side.js';

/**
 * How far an edge reaches off the wall's face while the strip is bent,
 * millimetres: by its width where it stands square, by the metal and the wire
 * in it where it is closed.
 */
export function hemReach(
  { foldedWidth, layers, wire }: EdgeTreatment,
  thickness: number,
  stage: HemStage,
): number {
  return stage === 'square' ? foldedWidth : wire + layers * thickness;
}
