import { checkAboveZero } from '../named-length.js';
import type { EdgeTreatment } from './edge-treatment.js';

/** Allowance in wire diameters. */
const DIAMETERS = 2.5;

/**
 * The edge rolled round a wire of diameter d, which takes 2 1/2 d: a wire of
 * 1/8 in takes 5/16 in. The wire runs on through the corners; only the metal
 * round it is notched there.
 *
 * Source: US Navy, Steelworker vol. 2, NAVEDTRA 14251, chapter 2, fabrication
 * of edges, joints, seams, and notches.
 *
 * @throws StripError if the diameter is not above 0.
 */
export function wiredEdge(wire: number): EdgeTreatment {
  checkAboveZero('wire', wire);
  const allowance = DIAMETERS * wire;
  return {
    name: 'wired edge',
    allowance,
    foldLines: [allowance],
    notchDepth: allowance,
    foldedWidth: allowance,
    layers: 1,
    wire,
    takesTab: false,
    source: 'NAVEDTRA 14251, Steelworker vol. 2, chapter 2, wired edge: 2 1/2 wire diameters',
  };
}
