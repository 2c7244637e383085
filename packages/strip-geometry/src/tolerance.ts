/**
 * How near counts as equal. Every comparison of geometry uses these two by
 * name. Both are far below what a rule or a protractor shows and far above
 * the rounding of floating-point numbers at the sizes of cutters.
 */

/** Lengths that differ by no more are equal, millimetres: a millionth. */
export const LENGTH_TOLERANCE = 1e-6;

/** Directions that differ by no more are equal, radians: about a fifth of a second of arc. */
export const ANGLE_TOLERANCE = 1e-6;
