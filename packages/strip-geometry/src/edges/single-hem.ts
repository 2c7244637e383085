import { checkAboveZero } from '../named-length.js';
import type { EdgeTreatment } from './edge-treatment.js';

/**
 * The edge folded over once, flat on the wall. A hem of width W takes W.
 * In thin tinplate the metal of the fold itself is below 1/128 in.
 *
 * Source: US Navy, Steelworker vol. 2, NAVEDTRA 14251, chapter 2, fabrication
 * of edges, joints, seams, and notches.
 *
 * @throws StripError if the width is not above 0.
 */
export function singleHem(width: number): EdgeTreatment {
  checkAboveZero('hem', width);
  return {
    name: 'single hem',
    allowance: width,
    foldLines: [width],
    notchDepth: width,
    foldedWidth: width,
    layers: 1,
    wire: 0,
    takesTab: true,
    source: 'NAVEDTRA 14251, Steelworker vol. 2, chapter 2, single hem: its width',
  };
}
