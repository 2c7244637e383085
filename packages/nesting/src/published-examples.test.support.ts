/** Lengths and quantities of an encyclopedic worked example of one-dimensional stock cutting. */
export const PAPER_ROLLS = [
  [1380, 22],
  [1520, 25],
  [1560, 12],
  [1710, 14],
  [1820, 18],
  [1880, 18],
  [1930, 20],
  [2000, 10],
  [2050, 12],
  [2100, 14],
  [2140, 16],
  [2150, 18],
  [2200, 20],
] as const;

/**
 * Lengths and widths of the instance gcut1 of OR-Library: J.E. Beasley, "Algorithms for
 * unconstrained two-dimensional guillotine cutting", JORS 36 (1985) 297-306.
 */
export const GCUT1 = [
  [167, 184],
  [114, 118],
  [167, 152],
  [83, 140],
  [70, 86],
  [143, 166],
  [120, 160],
  [66, 148],
  [87, 141],
  [69, 165],
] as const;
