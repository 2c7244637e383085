import type { ExactChain, Remnants } from '../box-solver/exact-chain.js';

/** What is known of one direction in which parts stand in a row. */
export interface Row {
  readonly mayCut: boolean;
  /** What a rest is worth; absent where that is nothing. */
  readonly remnants: Remnants | undefined;
  /** What each extent is worth as one part. */
  readonly uncut: Float64Array;
}

/** The best of every extent, as one part or as a row, before a kerf takes a rest. */
export function fillRow(
  chain: ExactChain,
  best: Float64Array,
  { mayCut, remnants, uncut }: Row,
): void {
  chain.restart();
  best[0] = 0;
  for (let x = 1; x < best.length; x++) {
    const whole = uncut[x];
    const cut = mayCut ? chain.cut(x, best, 0, remnants) : 0;
    best[x] = Math.max(whole, cut);
    if (mayCut && whole > cut && whole > remnantAt(remnants, x)) chain.add(x, whole);
  }
}

/** What a rest is worth as a remnant. */
export function remnantAt(remnants: Remnants | undefined, extent: number): number {
  return remnants === undefined ? 0 : remnants.coin * remnants.coins[remnants.start + extent];
}
