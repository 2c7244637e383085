import type { BoxLay } from '../pattern/box.js';
import { across, other } from '../pattern/cut-up.js';
import type { CuttingRules } from '../pattern/cutting-rules.js';
import { type Limits, mayRest } from '../pattern/limits.js';
import type { Slice } from '../pattern/part.js';
import type { Rolling } from '../problem.js';
import { fillStrip, fillStrips, type StripItem } from './fill-strip.js';

/** A rectangle that may be cut on. */
export interface Room {
  /** How its first cuts run. */
  readonly runs: Rolling;
  /** Gross extent square to these cuts. */
  readonly depth: number;
  /** Gross extent along them. */
  readonly breadth: number;
  /** How often the direction may change in it, 1 for these cuts alone; the last trim is extra. */
  readonly levels: number;
}

/** Slices for a room, and the copies of each piece in them. */
export interface Filling {
  readonly slices: readonly Slice[];
  readonly counts: ReadonlyMap<number, number>;
  readonly worth: number;
}

/** How hard a filling is sought. */
interface Effort {
  /** Of the widths that strips could have, the widest so many are tried. */
  readonly widths: number;
  /** How many states a knapsack may have. */
  readonly states: number;
}

const FULL: Effort = { widths: 24, states: 200_000 };
/** Within strips that are themselves tried at many widths. */
const LESS: Effort = { widths: 6, states: 50_000 };

/** What is put into a room that stays empty. */
export const NOTHING: Filling = { slices: [], counts: new Map(), worth: 0 };

/**
 * Fills a room with pieces of which some are wanted. One level is a knapsack;
 * above it, strip after strip, the one that uses its width best first.
 * @param wanted copies wanted of each piece
 * @param worths what a copy of each piece is worth, more than 0: its area or near it
 */
export function fillRoom(
  room: Room,
  wanted: readonly number[],
  worths: readonly number[],
  lays: readonly BoxLay[],
  rules: CuttingRules,
  effort: Effort = FULL,
): Filling {
  const { limits } = rules;
  const usable = lays.filter(
    (lay) =>
      wanted[lay.piece] > 0 &&
      across(lay, room.runs) <= room.depth &&
      across(lay, other(room.runs)) <= room.breadth &&
      across(lay, room.runs) - limits.kerf >= limits.narrowest,
  );
  if (usable.length === 0 || room.breadth - limits.kerf > limits.longestCut) return NOTHING;
  return room.levels === 1
    ? oneStrip(room, wanted, worths, usable, rules, effort)
    : stripByStrip(room, wanted, worths, usable, rules, effort);
}

function oneStrip(
  room: Room,
  wanted: readonly number[],
  worths: readonly number[],
  lays: readonly BoxLay[],
  rules: CuttingRules,
  effort: Effort,
): Filling {
  const items = lays
    .filter((lay) => canTrim(across(lay, other(room.runs)), room.breadth, rules.limits))
    .map((lay) => stripItem(lay, room.runs, wanted, worths));
  return fillingOf(items, fillStrip(room.depth, items, rules.limits, effort.states));
}

/**
 * Strips of every width at once: what goes into one goes into all wider ones.
 * That holds only where a trim to width may be as narrow as it comes.
 * @param widths gross extents of strips
 * @returns a filling for each
 */
function stripsOfWidths(
  { runs, depth }: Omit<Room, 'breadth'>,
  widths: readonly number[],
  wanted: readonly number[],
  worths: readonly number[],
  lays: readonly BoxLay[],
  rules: CuttingRules,
  effort: Effort,
): readonly Filling[] {
  const { limits } = rules;
  const square = other(runs);
  const items = lays
    .filter((lay) => wanted[lay.piece] > 0 && across(lay, runs) <= depth)
    .sort((a, b) => across(a, square) - across(b, square))
    .map((lay) => stripItem(lay, runs, wanted, worths));
  const rising = [...new Set(widths)].sort((a, b) => a - b);
  const ends = rising.map((width) =>
    width - limits.kerf > limits.longestCut
      ? 0
      : items.filter(({ lay }) => across(lay, square) <= width).length,
  );
  // What is too wide for the shear holds nothing; it comes last, and so do its ends of 0.
  const reachable = ends.filter((end) => end > 0);
  const counts = fillStrips(depth, items, reachable, limits, effort.states);
  const byWidth = new Map(
    rising.filter((_, i) => ends[i] > 0).map((width, i) => [width, counts[i]]),
  );
  return widths.map((width) => {
    const copies = byWidth.get(width);
    return copies ? fillingOf(items, copies) : NOTHING;
  });
}

function stripItem(
  lay: BoxLay,
  runs: Rolling,
  wanted: readonly number[],
  worths: readonly number[],
): StripItem {
  return { lay, extent: across(lay, runs), worth: worths[lay.piece], most: wanted[lay.piece] };
}

function canTrim(size: number, breadth: number, limits: Limits): boolean {
  return (
    size === breadth || (mayRest(breadth - size, limits) && size - limits.kerf >= limits.narrowest)
  );
}

function fillingOf(items: readonly StripItem[], copies: readonly number[]): Filling {
  const counts = new Map<number, number>();
  const slices: Slice[] = [];
  let total = 0;
  items.forEach(({ lay, extent, worth, most }, i) => {
    const before = counts.get(lay.piece) ?? 0;
    // A piece may have been taken both straight and turned, more often than it is wanted.
    const taken = Math.min(copies[i], most - before);
    if (taken === 0) return;
    counts.set(lay.piece, before + taken);
    total += worth * taken;
    const slice = { extent, part: { kind: 'lay', piece: lay.piece, turned: lay.turned } } as const;
    slices.push(...new Array<Slice>(taken).fill(slice));
  });
  return { slices, counts, worth: total };
}

function stripByStrip(
  room: Room,
  wanted: readonly number[],
  worths: readonly number[],
  lays: readonly BoxLay[],
  rules: CuttingRules,
  effort: Effort,
): Filling {
  const { runs, breadth, levels } = room;
  const left = [...wanted];
  const counts = new Map<number, number>();
  const slices: Slice[] = [];
  let total = 0;
  let depth = room.depth;
  for (;;) {
    const widths = [...new Set([depth, ...lays.map((lay) => across(lay, runs))])]
      .filter((width) => width <= depth && mayRest(depth - width, rules.limits))
      .sort((a, b) => b - a)
      .slice(0, effort.widths);
    const within = { runs: other(runs), depth: breadth, levels: levels - 1 };
    const fillings =
      levels === 2 && rules.limits.narrowest === 1
        ? stripsOfWidths(within, widths, left, worths, lays, rules, effort)
        : widths.map((width) => {
            const room = { ...within, breadth: width };
            return fillRoom(room, left, worths, lays, rules, levels > 2 ? LESS : effort);
          });
    let best: (Filling & { readonly width: number }) | undefined;
    for (const [i, filling] of fillings.entries()) {
      const width = widths[i];
      if (filling.worth === 0) continue;
      if (best === undefined || filling.worth * best.width > best.worth * width) {
        best = { ...filling, width };
      }
    }
    if (best === undefined) return { slices, counts, worth: total };
    const { width } = best;
    const part = { kind: 'split', cuts: other(runs), parts: best.slices } as const;
    do {
      slices.push({ extent: width, part });
      depth -= width;
      total += best.worth;
      for (const [piece, copies] of best.counts) {
        left[piece] -= copies;
        counts.set(piece, (counts.get(piece) ?? 0) + copies);
      }
    } while (
      width <= depth &&
      mayRest(depth - width, rules.limits) &&
      [...best.counts].every(([piece, copies]) => copies <= left[piece])
    );
  }
}

/** Different strips in one room, as a rule. */
const STRIPS = 20;

/** About how many steps it takes to fill a room with so many kinds of lays. */
export function effortToFill(
  { breadth, levels }: Room,
  lays: number,
  { narrowest }: Limits,
): number {
  const strip = Math.min(FULL.states, breadth * lays * 4);
  const strips = strip * STRIPS * (narrowest === 1 ? 1 : FULL.widths);
  return levels === 1 ? strip : levels === 2 ? strips : strips * FULL.widths * STRIPS;
}
