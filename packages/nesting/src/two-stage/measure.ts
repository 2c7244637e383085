import type { Limits } from '../pattern/limits.js';

/**
 * The steps of whole ticks in which knapsacks measure. With pieces rounded up, whatever fits in steps
 * does so in ticks: that makes patterns. With pieces rounded down, whatever fits in ticks does so in
 * steps: that makes a worth which no pattern exceeds.
 */
export interface Measure {
  /** Ticks of a step, at least 1. */
  readonly step: number;
  readonly pieces: 'up' | 'down';
}

/** Everything to the tick. */
export const EVERY_TICK: Measure = { step: 1, pieces: 'up' };

/** Steps that so many gross ticks of piece or strip take up; 0 where they are less than a step, rounded down. */
export function stepsOf(ticks: number, { step, pieces }: Measure): number {
  return pieces === 'up' ? Math.ceil(ticks / step) : Math.floor(ticks / step);
}

/**
 * Steps that may be filled of so many gross ticks. Where nothing narrow may be parted off and ticks are
 * not told apart, so much is always left that it may be.
 */
export function stepsWithin(ticks: number, { step }: Measure, { kerf, narrowest }: Limits): number {
  const left = step > 1 && narrowest > 1 ? kerf + narrowest : 0;
  return Math.max(0, Math.floor((ticks - left) / step));
}
