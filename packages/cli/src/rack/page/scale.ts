/** How many times smaller than life things are drawn. */
const SCALES = [1, 2, 2.5, 4, 5, 8, 10, 20, 25, 40, 50, 100, 200, 500, 1000] as const;

/** Two of the largest stand side by side on A4 and Letter, three or more one below the other. */
const LARGEST = { across: 88, high: 70 } as const;

/** The scale at which all of some things are drawn, so that they compare. */
export function scaleFor(
  things: readonly { readonly length: number; readonly width: number }[],
): number {
  const across = things.reduce((most, { length }) => Math.max(most, length), 0);
  const high = things.reduce((most, { width }) => Math.max(most, width), 0);
  const least = Math.max(across / LARGEST.across, high / LARGEST.high);
  return SCALES.find((scale) => scale >= least) ?? Math.ceil(least);
}
