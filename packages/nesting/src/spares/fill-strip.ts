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
  return fillStrips(room, items, [items.length], limits, mostStates)[0];
}

/**
 * The same for several strips of one length in one pass, where what goes into one
 * goes into all the later ones as well.
 * @param ends for each strip, how many of the items may go into it, ascending
 * @returns for each strip, how many of each item
 */
export function fillStrips(
  room: number,
  items: readonly StripItem[],
  ends: readonly number[],
  limits: Limits,
  mostStates: number,
): readonly (readonly number[])[] {
  const lots = items.flatMap((item, index) => inLots(item, index, room));
  const mark = Math.max(1, Math.ceil((room * lots.length) / mostStates));
  const states = Math.floor(room / mark) + 1;
  const worth = new Float64Array(states).fill(-1);
  const used = new Float64Array(states);
  worth[0] = 0;
  let reached = 0;
  const sizes = lots.map(({ copies, index }) => Math.ceil((copies * items[index].extent) / mark));
  const taken: Uint8Array[] = [];

  function add(lot: number): void {
    const { copies, index } = lots[lot];
    const size = sizes[lot];
    const gain = copies * items[index].worth;
    const length = copies * items[index].extent;
    const chosen = new Uint8Array(states);
    taken.push(chosen);
    reached = Math.min(states - 1, reached + size);
    for (let at = reached; at >= size; at--) {
      const before = worth[at - size];
      if (before < 0 || before + gain <= worth[at]) continue;
      worth[at] = before + gain;
      used[at] = used[at - size] + length;
      chosen[at] = 1;
    }
  }

  const anyRest = limits.narrowest <= 1;

  function best(): readonly number[] {
    let best = 0;
    for (let at = 1; at <= reached; at++) {
      if (worth[at] <= worth[best]) continue;
      if (anyRest || mayRest(room - used[at], limits)) best = at;
    }
    const counts = new Array<number>(items.length).fill(0);
    for (let lot = taken.length - 1; lot >= 0; lot--) {
      if (taken[lot][best] === 0) continue;
      counts[lots[lot].index] += lots[lot].copies;
      best -= sizes[lot];
    }
    return counts;
  }

  return ends.map((end) => {
    while (taken.length < lots.length && lots[taken.length].index < end) add(taken.length);
    return best();
  });
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
