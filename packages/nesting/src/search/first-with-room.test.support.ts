import type { BandBook } from '../master/band-book.js';
import { BandMaster } from '../master/band-master.js';
import type { SearchGround } from './ground.js';

/**
 * The linear plan over a book's bands in the first of several numbers of its slots that leaves
 * room for spare pieces; undefined where none does.
 */
export async function firstWithRoom(
  ground: SearchGround,
  book: BandBook,
  choices: readonly (readonly number[])[],
) {
  const master = new BandMaster({
    demand: ground.demand,
    classes: [],
    objective: { cost: undefined, caps: [] },
    spare: ground.demand.map(() => 1),
    book,
    engines: ground.engines,
  });
  try {
    master.addFromBook([], undefined);
    for (const slots of choices) {
      for (const [slot, count] of slots.entries()) master.setNeeded(slot, -count);
      const answer = await master.solve({ integer: false, seconds: 10 });
      if (typeof answer === 'string' || answer.duals === undefined || answer.cost >= 0) continue;
      return { slots, bands: answer.bands, duals: answer.duals, room: -answer.cost };
    }
    return undefined;
  } finally {
    master.close();
  }
}
