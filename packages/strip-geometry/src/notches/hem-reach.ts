import type { EdgeTreatment } from '../edges/edge-treatment.js';
import type { HemStage } from './hem-side.js';

/** Of metal whose bend rule takes no thickness, millimetres: usual tinplate (common practice). */
const USUAL_THICKNESS = 0.3;

/**
 * How far an edge reaches off the wall's face while the strip is bent,
 * millimetres: by its width where it stands square, by the metal and the wire
 * in it where it is closed. Metal stays as thick as it is where a bend rule
 * leaves its thickness out; 0.3 mm is taken then.
 */
export function hemReach(
  { foldedWidth, layers, wire }: EdgeTreatment,
  thickness: number,
  stage: HemStage,
): number {
  const metal = thickness > 0 ? thickness : USUAL_THICKNESS;
  return Math.min(foldedWidth, stage === 'square' ? foldedWidth : wire + layers * metal);
}
