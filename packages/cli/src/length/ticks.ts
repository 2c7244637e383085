/**
 * Lengths as whole numbers of ticks, a tick being the shop's smallest mark.
 * A blank rounds up so that no cutter comes out short; a sheet rounds down so
 * that no plan runs off its edge.
 */

/** A length this small a part of a tick beside a mark is on the mark: it is arithmetic, not metal. */
export const TICK_TOLERANCE = 1e-6;

/** A plan file rounds its lengths to this many millimetres. */
export const FILE_ROUNDING = 1e-6;

/** The least number of ticks that is not shorter than the length. */
export function ticksUp(millimetres: number, mark: number): number {
  return Math.ceil(millimetres / mark - TICK_TOLERANCE);
}

/** The greatest number of ticks that is not longer than the length. */
export function ticksDown(millimetres: number, mark: number): number {
  return Math.floor(millimetres / mark + TICK_TOLERANCE);
}

/** Millimetres of a whole number of ticks, rounded to 1e-6 mm. */
export function ticksToMillimetres(ticks: number, mark: number): number {
  return roundMillimetres(ticks * mark);
}

/** Rounded to 1e-6 mm, which clears the dust of binary arithmetic from a file. */
export function roundMillimetres(millimetres: number): number {
  return Number(millimetres.toFixed(6));
}

/**
 * The whole number of ticks that a plan file's length stands for, or
 * `undefined` where it lies off the marks by more than the file's rounding.
 */
export function ticksExactly(millimetres: number, mark: number): number | undefined {
  const ticks = Math.round(millimetres / mark);
  return Math.abs(ticks * mark - millimetres) <= FILE_ROUNDING ? ticks : undefined;
}
