import type { BandBook, SheetPattern } from '../master/band-book.js';
import type { BandDuals } from '../master/band-master.js';
import { listFillings, MostWorth } from '../pattern/fillings.js';
import type { Rolling } from '../problem.js';
import type { Measure } from '../two-stage/measure.js';
import { SheetKnapsack } from '../two-stage/sheet-knapsack.js';
import type { SearchGround } from './ground.js';

/** Slots of a width beyond those needed for bands that are settled already. */
const MORE_THAN_NEEDED = 2;
/** Steps of search for each division that may be listed. */
const STEPS_PER_DIVISION = 200;
/** Places at which slots are tried for one face; its breadth is measured in larger steps where they are more. */
const MOST_PLACES = 4_000_000;
/** A division must gain this share of a coin to be worth a column. */
const LEAST_GAIN = 1e-7;

interface Face {
  readonly box: number;
  readonly cuts: Rolling;
  readonly breadth: number;
  readonly length: number;
  /** Slots that are worth something. */
  readonly slots: readonly number[];
}

/**
 * The divisions of each box into slots of the book that are worth most at the
 * slots' duals: pricing of sheets where some bands are settled, whose slots no
 * piece that is still wanted would ask for.
 * @param needed by slot, how many bands are settled
 * @returns none where remnants have a value, which slots alone do not tell
 */
export function bestDivisions(
  ground: SearchGround,
  book: BandBook,
  duals: BandDuals,
  needed: readonly number[],
): readonly SheetPattern[] {
  return facesOf(ground, book, duals).flatMap((face) => {
    const widths = face.slots.map((slot) => ({
      extent: book.slots[slot].extent,
      leading: 0,
      fitting: [],
      stretches: false,
      whole: false,
      uncut: false,
    }));
    const most = face.slots.map((slot) => (needed[slot] ?? 0) + MORE_THAN_NEEDED);
    const { breadth, length } = face;
    const measure = stepsFor(face);
    const knapsack = new SheetKnapsack(
      breadth,
      length,
      widths,
      most,
      ground.limits,
      undefined,
      measure,
    );
    const worth = knapsack.solve((width) => duals.slots[face.slots[width]], 0);
    const filling = knapsack.filling();
    if (filling === undefined || worth <= duals.classes[face.box] + LEAST_GAIN) return [];
    return [divisionOf(face, filling.widths)];
  });
}

/**
 * Divisions that fall short of gaining by at most a gap.
 * @param gap in coins; it is halved until there are at most `most` of a face
 */
export function likelyDivisions(
  ground: SearchGround,
  book: BandBook,
  duals: BandDuals,
  needed: readonly number[],
  gap: number,
  most: number,
): readonly SheetPattern[] {
  if (ground.limits.narrowest > 1) return [];
  const { scale } = ground;
  return facesOf(ground, book, duals).flatMap((face) => {
    const request = {
      capacity: face.breadth,
      items: face.slots.map((slot) => ({
        size: book.slots[slot].extent,
        most: (needed[slot] ?? 0) + MORE_THAN_NEEDED,
      })),
      values: face.slots.map((slot) => Math.floor(duals.slots[slot] * scale)),
      required: 0,
    };
    if (placesOf(face) > MOST_PLACES) return [];
    const mostWorth = new MostWorth(request);
    const price = Math.floor(Math.max(0, duals.classes[face.box]) * scale);
    for (let short = Math.floor(gap * scale); short >= 1; short = Math.floor(short / 2)) {
      const budget = { fillings: most, steps: most * STEPS_PER_DIVISION };
      const listed = listFillings({ ...request, least: price - short }, budget, mostWorth);
      if (listed !== undefined) return listed.map((filling) => divisionOf(face, filling));
    }
    return [];
  });
}

function facesOf(ground: SearchGround, book: BandBook, duals: BandDuals): readonly Face[] {
  if (ground.bare !== undefined) return [];
  return ground.classes.flatMap(({ box }, b) =>
    box.firstCuts.flatMap((cuts) => {
      const slots = book.slotsOf(b, cuts).filter((slot) => (duals.slots[slot] ?? 0) > 0);
      const [length, breadth] =
        cuts === 'along' ? [box.length, box.width] : [box.width, box.length];
      return slots.length === 0 ? [] : [{ box: b, cuts, breadth, length, slots }];
    }),
  );
}

function placesOf({ slots, breadth }: Face): number {
  return slots.length * breadth;
}

function stepsFor(face: Face): Measure {
  let step = 1;
  while (placesOf(face) / step > MOST_PLACES) step *= 2;
  return { step, pieces: 'up' };
}

function divisionOf(face: Face, filling: readonly (readonly [number, number])[]): SheetPattern {
  const slots = filling
    .map(([index, count]) => [face.slots[index], count] as const)
    .sort((a, b) => a[0] - b[0]);
  return { box: face.box, cuts: face.cuts, slots, kept: 0 };
}
