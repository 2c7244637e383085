import type { RackWorth } from '../rack.js';
import type { Connection } from './rack-file.js';

/** Sums over what lies on the rack, and the scrap of all bookings that stand. */
export function worthOf(connection: Connection): RackWorth {
  const stock = connection
    .prepare<[], Omit<RackWorth, 'scrapArea' | 'scrapGrams'>>(
      `SELECT ifnull(sum(count) FILTER (WHERE kind = 'offcut'), 0) AS offcuts,
         ifnull(sum(count) FILTER (WHERE kind = 'sheets'), 0) AS sheets,
         total(count * (length / 1e6) * (width / 1e6)) FILTER (WHERE kind = 'offcut') AS offcutArea,
         total(count * (length / 1e6) * (width / 1e6)) FILTER (WHERE kind = 'sheets') AS sheetArea,
         ifnull(sum(count * book_value), 0) AS value,
         ifnull(sum(count) FILTER (WHERE book_value IS NULL), 0) AS unvalued
       FROM stock WHERE count > 0`,
    )
    .get();
  const scrap = connection
    .prepare<[], Pick<RackWorth, 'scrapArea' | 'scrapGrams'>>(
      `SELECT total(scrap_area) AS scrapArea, total(scrap_grams) AS scrapGrams
       FROM booking WHERE undone_at IS NULL`,
    )
    .get();
  if (stock === undefined || scrap === undefined) throw new Error('A sum has no row.');
  return { ...stock, ...scrap };
}
