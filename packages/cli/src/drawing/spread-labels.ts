/**
 * Moves labels apart along a line, each as little as can be in sum of squares.
 *
 * Labels of equal height `pitch` keep their order if their centres c[i] - i * pitch do not
 * decrease; the nearest such centres are the isotonic regression of the wanted ones, found by
 * pooling neighbours that are out of order (Barlow, Bartholomew, Bremner and Brunk,
 * Statistical Inference under Order Restrictions, 1972).
 *
 * @param wanted centres in ascending order
 * @param from the lowest a label may reach
 * @param to the highest; `to - from` must hold all the labels
 * @returns centres in the same order
 */
export function spreadLabels(
  wanted: readonly number[],
  pitch: number,
  from: number,
  to: number,
): readonly number[] {
  const pools: { sum: number; count: number }[] = [];
  for (const [index, centre] of wanted.entries()) {
    let pool = { sum: centre - index * pitch, count: 1 };
    for (let last = pools.at(-1); last !== undefined && mean(last) > mean(pool); ) {
      pools.pop();
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
      last = pools.at(-1);
    }
    pools.push(pool);
  }
  const lowest = from + pitch / 2;
  const highest = to - pitch / 2 - (wanted.length - 1) * pitch;
  return pools
    .flatMap((pool) => Array.from({ length: pool.count }, () => mean(pool)))
    .map((centre, index) => Math.min(Math.max(centre, lowest), highest) + index * pitch);
}

const mean = (pool: { readonly sum: number; readonly count: number }): number =>
  pool.sum / pool.count;
