/**
 * Shares a whole number out by weights so that the shares are whole and add up to it
 * exactly: each gets its quota rounded down, and what is left goes one by one to the
 * largest remainders, the earlier one first where they are equal (the method of the
 * largest remainder, as for seats: Balinski and Young, Fair Representation, 1982).
 *
 * @param whole 0 or more
 * @param weights 0 or more each; where all are 0, the first takes all
 */
export function shareOut(whole: number, weights: readonly bigint[]): readonly number[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0n);
  if (all === 0n) return weights.map((_, index) => (index === 0 ? whole : 0));
  const quotas = weights.map((weight) => ({
    floor: (BigInt(whole) * weight) / all,
    remainder: (BigInt(whole) * weight) % all,
  }));
  let left = whole - Number(quotas.reduce((sum, { floor }) => sum + floor, 0n));
  const shares = quotas.map(({ floor }) => Number(floor));
  const byRemainder = quotas
    .map(({ remainder }, index) => ({ remainder, index }))
    .sort((one, other) =>
      one.remainder === other.remainder
        ? one.index - other.index
        : one.remainder > other.remainder
          ? -1
          : 1,
    );
  for (const { index } of byRemainder) {
    if (left === 0) break;
    shares[index] = (shares[index] ?? 0) + 1;
    left -= 1;
  }
  return shares;
}
