/** Largest length in ticks: dynamic programmes hold one number for each tick. */
export const LONGEST = 200_000;
/** Largest quantity of one piece, or of its spares, and of one sheet. */
export const MOST = 1_000_000;
/** Largest sum of all quantities and spares: sums of coins stay whole numbers that doubles hold. */
export const MOST_TOGETHER = 10_000_000;
/** Most pieces that one sheet or offcut might hold: each has an entry in its layout, and a cut or two. */
export const MOST_ON_ONE = 100_000;
/** Most entries of a list: sizes of piece, sizes of sheet with offcuts, rules. */
export const MOST_ENTRIES = 10_000;
/** Largest price, book value, trouble and rate in coins. */
export const DEAREST = 100_000_000;
/** Most sheets in a pack. */
export const LARGEST_PACK = 1_000;
