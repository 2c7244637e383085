/**
 * The face of the wall that a hem is folded to.
 *
 * `outside` is what this package takes unless told otherwise: the inside face,
 * which shapes the dough and which the drawing gives, stays smooth from edge to
 * edge, and the hem opens rather than jams at the bends toward the inside,
 * which are the most and the sharpest ones. The cutting edge is the other edge;
 * it is never folded.
 */
export type HemFace = 'outside' | 'inside';
