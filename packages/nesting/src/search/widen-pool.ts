import type { BandBook } from '../master/band-book.js';
import type { BandAnswer } from '../master/band-master.js';
import type { SearchGround } from './ground.js';
import { bestInSlots, listPatterns, type PatternListRequest } from './list-patterns.js';

/**
 * The pool with the patterns besides that lose least against a linear plan, which may be far from
 * the plan that the pool was made for where few sheets are taken and their numbers are settled.
 * @returns a pool whose patterns begin with those of the one before, in their order, and the linear
 *   plan with a dual for each of its slots; undefined where patterns cannot be listed
 */
export function widenPool(
  ground: SearchGround,
  request: PatternListRequest,
): { readonly pool: BandBook; readonly answer: BandAnswer } | undefined {
  const { pool, answer } = request;
  const listed = answer.duals && listPatterns(ground, request);
  if (listed === undefined || answer.duals === undefined) return undefined;
  const wide = ground.newBook();
  for (const book of [pool, listed]) {
    wide.adopt(book, [...book.bands.keys()], [...book.sheets.keys()]);
  }
  const slots = [...bestInSlots(wide, answer.duals.pieces)];
  pool.slots.forEach((slot, index) => {
    const at = wide.find(slot);
    const dual = answer.duals?.slots[index];
    if (at !== undefined && dual !== undefined) slots[at] = dual;
  });
  return { pool: wide, answer: { ...answer, duals: { ...answer.duals, slots } } };
}
