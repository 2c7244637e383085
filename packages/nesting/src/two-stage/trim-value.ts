import type { KeepValue } from '../pattern/keep-value.js';
import { type Limits, netRest } from '../pattern/limits.js';
import type { StripLay } from './strip-family.js';

/** Coins that the remnant is worth which is trimmed off beside a lay in a strip so wide, in gross ticks. */
export function trimValue(
  { along, across }: StripLay,
  extent: number,
  limits: Limits,
  keep: KeepValue | undefined,
): number {
  return keep?.(along - limits.kerf, netRest(extent - across, limits)) ?? 0;
}
