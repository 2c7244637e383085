import type { Seam } from './seams/seam.js';

/**
 * Where the ends of a strip meet, as a shop asks for it: at a corner of the
 * outline, counted from 1 in the order it is drawn; at a distance along the
 * outline, millimetres from where its drawing starts; or in the middle of its
 * longest straight side.
 */
export type SeamPlace =
  | { readonly corner: number }
  | { readonly distance: number }
  | 'middle of the longest flat';

/**
 * Degrees that the ends may turn through where they lie on each other. More is
 * a tight curve, which neither pinches shut nor lies close (common practice).
 */
export const SEAM_TURN_LIMIT = 90;

/** What of a seam decides where it fits. Millimetres. */
export type SeamRoom = Pick<Seam, 'name' | 'overlap' | 'flatBefore'>;
