import type { BandBook } from '../master/band-book.js';
import type { BandDuals } from '../master/band-master.js';
import type { Rolling } from '../problem.js';
import type { SearchGround } from './ground.js';

export interface Listing {
  /** Bands of a slot that are listed at most. */
  readonly most: number;
  /** By how much of a measure of spare pieces they may fall short of gaining; less where there are more. */
  readonly short: number;
}

/** How much nearer to the best is looked where there are more. */
const NEARER = 1.5;
const NEAREST = 1e-7;

/**
 * A book of the sheets and bands of another, in their order, and of those bands besides
 * that fall short of gaining by least in each of its slots.
 * @param left copies of each piece that are wanted
 * @param duals by which bands gain
 */
export function withLikelyBands(
  ground: SearchGround,
  known: BandBook,
  left: readonly number[],
  duals: BandDuals,
  { most, short: shortAtMost }: Listing,
): BandBook {
  const book = ground.newBook();
  book.adopt(known, [], [...known.sheets.keys()]);
  book.adopt(known, [...known.bands.keys()], []);
  const pricer = ground.pricerFor(left);
  const places = placesOf(ground, known);
  known.slots.forEach(({ family, extent }, slot) => {
    const place = places.get(slot);
    if (place === undefined) return;
    const narrower = known.slots.filter(
      (other) => other.family === family && other.extent < extent,
    );
    const beyond = Math.max(0, ...narrower.map((other) => other.extent));
    const worth = duals.slots[slot] ?? 0;
    for (let short = shortAtMost; short > NEAREST; short /= NEARER) {
      const at = { ...place, extent };
      const bands = pricer.bandsOf?.(duals.pieces, at, beyond, worth - short, most);
      if (bands === undefined) continue;
      for (const band of bands) book.addBand(band);
      return;
    }
  });
  return book;
}

/** For each slot of a book, a box that has it and how its first cuts run then. */
function placesOf(
  { classes }: SearchGround,
  book: BandBook,
): ReadonlyMap<number, { readonly box: number; readonly cuts: Rolling }> {
  const places = new Map<number, { box: number; cuts: Rolling }>();
  classes.forEach(({ box: { firstCuts } }, box) => {
    for (const cuts of firstCuts) {
      for (const slot of book.slotsOf(box, cuts)) {
        if (!places.has(slot)) places.set(slot, { box, cuts });
      }
    }
  });
  return places;
}
