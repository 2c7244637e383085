import type { BandBook } from '../master/band-book.js';

/**
 * How many of each slot of a book sheets have.
 * @param sheets how many there are of each sheet pattern of the book; broken ones too
 */
export function slotsOf(book: BandBook, sheets: ArrayLike<number>): Float64Array {
  const slots = new Float64Array(book.slots.length);
  book.sheets.forEach(({ slots: own }, sheet) => {
    for (const [slot, copies] of own) slots[slot] += copies * (sheets[sheet] ?? 0);
  });
  return slots;
}
