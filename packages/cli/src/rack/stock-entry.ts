import { amountOf } from '../money.js';
import type { RackStock } from './rack.js';

/** A thing on the rack as JSON: millimetres, and money as decimal numbers. What is not known is left out. */
export function stockEntry(stock: RackStock) {
  const { mark, kind, name, length, width, metal, thickness, rolled } = stock;
  const { place, origin, bookValue, count, promised, addedAt } = stock;
  return {
    mark,
    kind,
    ...(name === '' ? {} : { name }),
    length,
    width,
    metal,
    ...(thickness === undefined ? {} : { thickness }),
    ...(rolled === undefined ? {} : { rolled }),
    ...(place === '' ? {} : { place }),
    ...(origin === '' ? {} : { from: origin }),
    ...(bookValue === undefined ? {} : { value: amountOf(bookValue) }),
    count,
    promised,
    since: addedAt,
  };
}
