import type { Slice } from '../pattern/part.js';
import type { Divided, Lot } from './slice-pool.js';

/** Rectangles that are divided into the same extents. */
interface Frame {
  /** [extent, how many slices have it]. */
  readonly slots: readonly (readonly [number, number])[];
  left: number;
}

/**
 * Shares the slices of equal rectangles out again, every slice to a place of its
 * own extent, so that many rectangles become alike: again and again the frame and
 * the slices are taken that serve most rectangles at once. No cut moves and no
 * remnant changes; only what lies between the cuts changes places.
 * @param divided how many rectangles there are, and into which extents they are divided
 * @param lots slices for all of these places; they are used up
 * @param random noise in the choice, for a search to try several
 */
export function shareOut(
  divided: readonly Divided[],
  lots: readonly Lot[],
  random: () => number,
): readonly Divided[] {
  const frames = framesOf(divided);
  const byExtent = new Map<number, Lot[]>();
  for (const lot of lots) {
    const { extent } = lot.slice;
    byExtent.set(extent, [...(byExtent.get(extent) ?? []), lot]);
  }
  const shared: Divided[] = [];
  while (frames.length > 0) {
    const choices = frames.map((frame) => ({ frame, count: mostAlike(frame, byExtent) }));
    choices.sort((a, b) => b.count - a.count);
    const { frame, count: most } = random() < 0.8 ? choices[0] : pick(choices, random);
    const count = random() < 0.8 ? most : 1 + Math.floor(random() * most);
    const slices = frame.slots.flatMap(([extent, slots]) =>
      take(byExtent.get(extent) ?? [], slots, count, random),
    );
    shared.push({ slices, count });
    frame.left -= count;
    if (frame.left === 0) frames.splice(frames.indexOf(frame), 1);
  }
  return shared;
}

function framesOf(divided: readonly Divided[]): Frame[] {
  const frames = new Map<string, Frame>();
  for (const { slices, count } of divided) {
    const extents = slices.map(({ extent }) => extent).sort((a, b) => b - a);
    const key = extents.join(' ');
    const frame = frames.get(key);
    if (frame) frame.left += count;
    else {
      const slots = new Map<number, number>();
      for (const extent of extents) slots.set(extent, (slots.get(extent) ?? 0) + 1);
      frames.set(key, { slots: [...slots], left: count });
    }
  }
  return [...frames.values()];
}

/** How many rectangles of a frame could be alike. */
function mostAlike(frame: Frame, byExtent: ReadonlyMap<number, readonly Lot[]>): number {
  const enough = (count: number) =>
    frame.slots.every(([extent, slots]) => {
      const lots = byExtent.get(extent) ?? [];
      return lots.reduce((sum, lot) => sum + Math.floor(lot.left / count), 0) >= slots;
    });
  let low = 1;
  let high = frame.left;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (enough(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Slices for `count` rectangles: those first that come out even, then those of which there are most. */
function take(
  lots: readonly Lot[],
  slots: number,
  count: number,
  random: () => number,
): readonly Slice[] {
  const order = lots
    .filter((lot) => lot.left >= count)
    .map((lot) => ({ lot, even: Number(lot.left % count === 0), noise: random() }))
    .sort(
      (a, b) =>
        (a.noise < 0.9 && b.noise < 0.9 ? b.even - a.even || b.lot.left - a.lot.left : 0) ||
        a.noise - b.noise,
    );
  const slices: Slice[] = [];
  for (const { lot } of order) {
    const taken = Math.min(slots - slices.length, Math.floor(lot.left / count));
    lot.left -= taken * count;
    slices.push(...new Array<Slice>(taken).fill(lot.slice));
  }
  return slices;
}

function pick<T>(items: readonly T[], random: () => number): T {
  return items[Math.floor(random() * items.length)];
}
