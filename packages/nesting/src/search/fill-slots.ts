import type { BandBook } from '../master/band-book.js';
import type { BandDuals } from '../master/band-master.js';
import type { SearchGround } from './ground.js';
import { withLikelyBands } from './likely-bands.js';
import { leastFirst, reducedCosts } from './reduced-costs.js';
import { solveWholeBands } from './whole-bands-master.js';

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
/** Bands that the integer master works with at most, and nodes it may take each time. */
const BANDS = 2_500;
const NODES = 200;
const EPSILON = 1e-9;

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
  const { book, costs, slots } = listed(ground, request);
  let tried = 0;
  for (const share of SHARES) {
    const within = costs.map((cost) =>
      cost <= share * room + EPSILON ? cost : Number.POSITIVE_INFINITY,
    );
    const bands = leastFirst(within, BANDS);
    if (bands.length === tried) continue;
    if (deadline.left() <= 0) return undefined;
    tried = bands.length;
    const open = { book, bands, slots, demand: ground.demand };
    const answer = await solveWholeBands(ground, open, { nodes: NODES });
    if (typeof answer !== 'string') return { book, bands: answer.bands };
    if (answer === 'stopped') return undefined;
  }
  return 'none';
}

/** All bands that may use up as much, what each of them loses, and the slots of their book. */
function listed(
  ground: SearchGround,
  { book: known, slots, duals, room }: FillRequest,
): { readonly book: BandBook; readonly costs: readonly number[]; readonly slots: number[] } {
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
  const { bands } = reducedCosts(book, { ...duals, slots: worth }, (_, copies) => copies);
  return { book, costs: bands, slots: counts };
}
