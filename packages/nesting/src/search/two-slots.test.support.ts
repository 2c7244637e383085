import { seededRandom } from '../random.js';
import { addBand } from './add-band.test.support.js';
import { firstWithRoom } from './first-with-room.test.support.js';
import { groundOfOneSlot } from './one-slot.test.support.js';

export type Copies = readonly number[];

const LENGTH = 100;
/** Extents of the two slots: all bands may lie in the wider one, those of the last kind only there. */
const NARROW = 10;
const WIDE = 13;
const MOST_SLOTS = 30;
/** The share of the bands that are drawn. */
const DRAWN = 0.4;

/**
 * Bands that fit, narrow ones and those that need the wide slot, with no more of a kind than are
 * wanted; some drawn from all there are.
 */
function someBands(lengths: Copies, quantities: Copies, seed: number) {
  let all: Copies[] = [[]];
  lengths.forEach((_, i) => {
    all = all.flatMap((band) =>
      Array.from({ length: quantities[i] + 1 }, (_, copies) => [...band, copies]),
    );
  });
  const taken = (band: Copies) => band.reduce((sum, copies, i) => sum + copies * lengths[i], 0);
  const random = seededRandom(seed);
  const fitting = all.filter(
    (band) => taken(band) > 0 && taken(band) <= LENGTH && random() < DRAWN,
  );
  const last = lengths.length - 1;
  return {
    narrow: fitting.filter((band) => band[last] === 0),
    wide: fitting.filter((band) => band[last] > 0),
  };
}

/**
 * The linear plan over some bands of two slots, of the fewest narrow ones that leave room besides
 * so many wide ones; undefined where that takes too many, or a slot or a piece has no band.
 */
export async function planOfTwoSlots(
  lengths: Copies,
  quantities: Copies,
  wideSlots: number,
  seed: number,
) {
  const ground = groundOfOneSlot([LENGTH, WIDE], lengths, quantities);
  const bands = someBands(lengths, quantities, seed);
  if (bands.narrow.length === 0 || bands.wide.length === 0) return undefined;
  const book = ground.newBook();
  for (const copies of bands.narrow) addBand(book, lengths, copies, NARROW);
  for (const copies of bands.wide) addBand(book, lengths, copies, WIDE);
  const choices = Array.from({ length: MOST_SLOTS + 1 }, (_, narrow) => [narrow, wideSlots]);
  const plan = await firstWithRoom(ground, book, choices);
  return plan && { ground, book, bands, slots: plan.slots, duals: plan.duals, room: plan.room };
}
