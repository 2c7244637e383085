/** Copies of one item that a knapsack takes or leaves together. */
export interface Lot {
  /** Index of the item. */
  readonly item: number;
  readonly copies: number;
  /** Room for all of them. */
  readonly size: number;
  /** True where the lot may be taken over and over. */
  readonly again: boolean;
}

/**
 * The lots of an item: one that may be taken over and over where its copies can
 * exhaust the room, else lots of 1, 2, 4, ... copies that make up any number.
 * @param size at least 1
 * @param most copies, at least 0
 */
export function lotsOf(item: number, size: number, most: number, room: number): readonly Lot[] {
  const fits = Math.floor(room / size);
  if (fits === 0 || most === 0) return [];
  if (most >= fits) return [{ item, copies: 1, size, again: true }];
  const lots: Lot[] = [];
  let left = most;
  for (let copies = 1; left > 0; copies *= 2) {
    const lot = Math.min(copies, left);
    lots.push({ item, copies: lot, size: lot * size, again: false });
    left -= lot;
  }
  return lots;
}

/**
 * One step of the bounded knapsack: offers a lot to every filling. Values that
 * are whole numbers below 2^53 in sum stay exact.
 * @param best value of the best filling of each size, changed in place
 * @param taken set to 1 from `base` on where the lot is part of it; it must be all 0
 * @param worth of all copies of the lot; one that is not above 0 is left out
 */
export function offerLot(
  best: Float64Array,
  taken: Uint8Array,
  base: number,
  lot: Lot,
  worth: number,
): void {
  if (!(worth > 0)) return;
  const { size } = lot;
  const end = best.length;
  if (lot.again) {
    for (let room = size; room < end; room++) {
      const value = best[room - size] + worth;
      if (value > best[room]) {
        best[room] = value;
        taken[base + room] = 1;
      }
    }
    return;
  }
  for (let room = end - 1; room >= size; room--) {
    const value = best[room - size] + worth;
    if (value > best[room]) {
      best[room] = value;
      taken[base + room] = 1;
    }
  }
}

/** Offers a lot to every filling like `offerLot`, where what is taken need not be known. */
export function fillWithLot(best: Float64Array, { size, again }: Lot, worth: number): void {
  if (!(worth > 0)) return;
  const end = best.length;
  const [from, step] = again ? [size, 1] : [end - 1, -1];
  for (let room = from; room >= size && room < end; room += step) {
    const value = best[room - size] + worth;
    if (value > best[room]) best[room] = value;
  }
}

/**
 * Walks back through lots that were offered in order, adding up the copies taken.
 * @returns the room at which the walk arrived before the first lot
 */
export function walkBack(
  lots: readonly Lot[],
  taken: Uint8Array,
  room: number,
  counts: Map<number, number>,
): number {
  const width = lots.length === 0 ? 0 : taken.length / lots.length;
  let at = room;
  for (let index = lots.length - 1; index >= 0; index--) {
    const lot = lots[index];
    while (taken[index * width + at] === 1) {
      counts.set(lot.item, (counts.get(lot.item) ?? 0) + lot.copies);
      at -= lot.size;
      if (!lot.again) break;
    }
  }
  return at;
}
