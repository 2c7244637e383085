import { checkAboveZero } from '../named-length.js';
import type { EdgeTreatment } from './edge-treatment.js';

/**
 * The edge folded over twice, so that the raw edge lies hidden inside. A hem
 * of finished width W takes 2 W: the first fold at W, the second at 2 W.
 *
 * Source: US Navy, Steelworker vol. 2, NAVEDTRA 14251, chapter 2, fabrication
 * of edges, joints, seams, and notches.
 *
 * @throws StripError if the width is not above 0.
 */
export function doubleHem(width: number): EdgeTreatment {
  checkAboveZero('hem', width);
  return {
    name: 'double hem',
    allowance: 2 * width,
    foldLines: [width, 2 * width],
    notchDepth: 2 * width,
    foldedWidth: width,
    layers: 2,
    wire: 0,
    takesTab: true,
    source: 'NAVEDTRA 14251, Steelworker vol. 2, chapter 2, double hem: twice its width',
  };
}
