/**
 * How near counts as equal. Every comparison of geometry uses these by
 * name. The first two are far below what a rule or a protractor shows and far above
 * the rounding of floating-point numbers at the sizes of cutters.
 */

/** Lengths that differ by no more are equal, millimetres: a millionth. */
export const LENGTH_TOLERANCE = 1e-6;

/** Directions that differ by no more are equal, radians: about a fifth of a second of arc. */
export const ANGLE_TOLERANCE = 1e-6;

/**
 * Turns that are no more do not show on a bench, radians: half a degree, about
 * what a protractor shows (common practice).
 */
export const SLIGHT_TURN = Math.PI / 360;
