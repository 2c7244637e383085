import type { BoxLay } from '../pattern/box.js';
import { type Limits, mayRest } from '../pattern/limits.js';

/** A lay as an item of a strip: how much of the strip it takes, and what it is worth. */
export interface StripItem {
  readonly lay: BoxLay;
  /** Gross ticks along the strip, at least 1. */
  readonly extent: number;
  /** More than 0. */
  readonly worth: number;
  /** Copies there may be, at least 1. */
  readonly most: number;
}

/**
 * Fills a strip with what is worth most: a bounded knapsack, whose rest the
 * machine must be able to part off. Where the strip is so long that it has too
 * many states, lengths are rounded up to a coarser mark, and the filling is
 * still one that fits but perhaps not the best.
 * @param room gross ticks
 * @param mostStates how many there may be, over all items
 * @returns how many of each item
 */
export function fillStrip(
  room: number,
  items: readonly StripItem[],
  limits: Limits,
  mostStates: number,
): readonly number[] {
  const lots = items.flatMap((item, index) => inLots(item, index, room));
  const mark = Math.max(1, Math.ceil((room * lots.length) / mostStates));
  const states = Math.floor(room / mark) + 1;
  const worth = new Float64Array(states).fill(-1);
  const used = new Float64Array(states);
  worth[0] = 0;
  const taken = lots.map(({ copies, index }) => {
    const item = items[index];
    const size = Math.ceil((copies * item.extent) / mark);
    const taken = new Uint8Array(states);
    for (let at = states - 1; at >= size; at--) {
      const before = worth[at - size];
      if (before < 0 || before + copies * item.worth <= worth[at]) continue;
      worth[at] = before + copies * item.worth;
      used[at] = used[at - size] + copies * item.extent;
      taken[at] = 1;
    }
    return { taken, size };
  });
  let best = 0;
  for (let at = 1; at < states; at++) {
    if (worth[at] > worth[best] && mayRest(room - used[at], limits)) best = at;
  }
  const counts = new Array<number>(items.length).fill(0);
  for (let lot = lots.length - 1; lot >= 0; lot--) {
    if (taken[lot].taken[best] === 0) continue;
    counts[lots[lot].index] += lots[lot].copies;
    best -= taken[lot].size;
  }
  return counts;
}

/** Copies in lots of 1, 2, 4 and so on, of which every number can be put together. */
function inLots(
  { extent, most }: StripItem,
  index: number,
  room: number,
): readonly { readonly index: number; readonly copies: number }[] {
  const lots: { index: number; copies: number }[] = [];
  let left = Math.min(most, Math.floor(room / extent));
  for (let copies = 1; left > 0; copies *= 2) {
    const lot = Math.min(copies, left);
    lots.push({ index, copies: lot });
    left -= lot;
  }
  return lots;
}
