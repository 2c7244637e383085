import type { KeepRule } from '@stripwright/nesting';

/** A rate in whole coins is at least so many, so that rounding takes off no more than a hundredth. */
const LEAST_COINS = 100;
/** Square marks are counted by no more than so many millions. */
const MOST_MILLIONS = 1_000_000;

/**
 * What offcuts are worth by area as the planner takes it, in whole coins rounded down: for a million square
 * marks, or for ten times as many again and again, where marks are so fine that coins would be too coarse.
 * @param coins for a million square marks, whole or not
 */
export function rackRate(coins: number): Pick<KeepRule, 'coinsPerMillion' | 'millions'> {
  let millions = 1;
  while (coins > 0 && Math.floor(coins * millions) < LEAST_COINS && millions < MOST_MILLIONS) {
    millions *= 10;
  }
  const coinsPerMillion = Math.floor(coins * millions);
  return millions === 1 ? { coinsPerMillion } : { coinsPerMillion, millions };
}
