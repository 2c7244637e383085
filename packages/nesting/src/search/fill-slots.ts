import type { BandBook } from '../master/band-book.js';
import type { BandDuals } from '../master/band-master.js';
import { type BandPlace, bandPlaces } from './band-places.js';
import { fillPlaces } from './fill-places.js';
import type { SearchGround } from './ground.js';
import { withLikelyBands } from './likely-bands.js';

export interface FillRequest {
  readonly book: BandBook;
  /** By slot of the book, how many there are. */
  readonly slots: readonly number[];
  /** Of the linear plan of the bands. */
  readonly duals: BandDuals;
  /** Measures of spare pieces that the linear plan cuts. */
  readonly room: number;
}

/** Whole bands. */
export interface FilledSlots {
  readonly book: BandBook;
  readonly bands: readonly number[];
}

/** Bands of a slot that are listed at most. */
const MOST_OF_SLOT = 1_000;
/** What share of the room a band may use up: bands that use up more are hardly ever of use. */
const SHARES = [0.2, 0.3, 0.5];
/** Places of bands that the integer master works with at most, and nodes it may take each time. */
const PLACES = 2_500;
const NODES = 10;
/** Multipliers come with eight decimals. */
const EPSILON = 1e-6;

/**
 * Whole bands in whole slots that give all the pieces, by integer masters over the bands
 * that lose least against the linear plan. The bands of a plan together lose no more than the
 * room that the linear plan leaves: little room leaves few bands to choose from, and where
 * those will not do, the masters mostly prove it at once.
 * @returns 'none' where it is proven that these bands will not do, undefined where none were found
 */
export async function fillSlots(
  ground: SearchGround,
  request: FillRequest,
): Promise<FilledSlots | 'none' | undefined> {
  const { deadline } = ground;
  const { room } = request;
  const { book, duals, slots } = listed(ground, request);
  const all = bandPlaces(book, slots, duals, Math.max(...SHARES) * room + EPSILON);
  let tried = 0;
  for (const share of SHARES) {
    const places = all
      .filter(({ loss }) => loss <= share * room + EPSILON)
      .sort((a, b) => a.loss - b.loss || a.slot - b.slot || a.band - b.band)
      .slice(0, PLACES);
    if (places.length === tried) continue;
    if (deadline.left() <= 0) return undefined;
    tried = places.length;
    const answer = await fillPlaces(ground, { places, slots, duals, room, nodes: NODES });
    if (answer === 'stopped') return undefined;
    if (answer !== 'infeasible') return { book, bands: countsOfBands(book, places, answer) };
  }
  return 'none';
}

/** By band of the book, how many there are in all its places. */
function countsOfBands(
  book: BandBook,
  places: readonly BandPlace[],
  numbers: readonly number[],
): readonly number[] {
  const counts = book.bands.map(() => 0);
  places.forEach(({ band }, place) => {
    counts[band] += numbers[place];
  });
  return counts;
}

/** A book with all bands that may use up as much, what its slots are worth and how many there are. */
function listed(
  ground: SearchGround,
  { book: known, slots, duals, room }: FillRequest,
): { readonly book: BandBook; readonly duals: BandDuals; readonly slots: readonly number[] } {
  const listing = { most: MOST_OF_SLOT, short: room * Math.max(...SHARES) };
  const book = withLikelyBands(ground, known, ground.demand, duals, listing);
  const worth = book.slots.map(() => 0);
  const counts = book.slots.map(() => 0);
  known.slots.forEach((slot, index) => {
    const here = book.find(slot);
    if (here === undefined) return;
    worth[here] = duals.slots[index] ?? 0;
    counts[here] = slots[index] ?? 0;
  });
  return { book, duals: { ...duals, slots: worth }, slots: counts };
}
