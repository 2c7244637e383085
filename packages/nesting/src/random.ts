/**
 * A small generator of pseudo-random numbers from 0 inclusive to 1 exclusive,
 * the same for the same seed (Marsaglia 2003, "Xorshift RNGs", with 32 bits).
 */
export function seededRandom(seed: number): () => number {
  let state = (seed + 0x9e3779b9) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
