/**
 * What a file may hold. Far above what a drawing of a cutter needs, and low
 * enough that a file made to do harm is refused at once.
 */

/** Characters in the file. */
export const MOST_CHARACTERS = 8_000_000;

/** Elements within elements, and uses of uses. */
export const MOST_DEPTH = 100;

/** Elements in the file, and elements drawn when every use is followed. */
export const MOST_ELEMENTS = 20_000;

/** Lines and curves in all the paths together. */
export const MOST_PIECES = 20_000;

/** Coordinates larger than this, in millimetres, are no drawing of a cutter: a kilometre. */
export const FARTHEST = 1e6;

/** Characters in one number. */
export const LONGEST_NUMBER = 60;

/** Outlines that are fitted with few lines and arcs: the more, the less can be tried for each. */
export const MOST_FITTED = 20;
