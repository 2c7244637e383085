import type { RackFilter, RackStock } from '../rack.js';
import { millimetres } from './nanometres.js';
import type { Connection } from './rack-file.js';

/** A row of the table of stock. */
export interface StockRow {
  readonly number: number;
  readonly mark: string;
  readonly kind: 'offcut' | 'sheets';
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly metal: string;
  readonly thickness: number | null;
  readonly rolled: 'along' | 'across' | null;
  readonly place: string;
  readonly origin: string;
  readonly added_at: string;
  readonly book_value: number | null;
  readonly count: number;
  readonly promised: number;
}

export function toStock(row: StockRow): RackStock {
  const { mark, kind, name, metal, place, origin, count, promised } = row;
  return {
    mark,
    kind,
    name,
    length: millimetres(row.length),
    width: millimetres(row.width),
    metal,
    ...(row.thickness === null ? {} : { thickness: millimetres(row.thickness) }),
    ...(row.rolled === null ? {} : { rolled: row.rolled }),
    place,
    origin,
    ...(row.book_value === null ? {} : { bookValue: row.book_value }),
    count,
    promised,
    addedAt: row.added_at,
  };
}

/** Oldest first. */
export function listStock(connection: Connection, filter: RackFilter): readonly RackStock[] {
  const { kind, metal, thickness, leastLength = 0, leastWidth = 0, free, gone } = filter;
  const conditions: string[] = [];
  const values: unknown[] = [];
  const need = (condition: string, ...given: readonly unknown[]) => {
    conditions.push(condition);
    values.push(...given);
  };
  if (gone !== true) need('count > 0');
  if (free === true) need('count > promised');
  if (kind !== undefined) need('kind = ?', kind);
  if (metal !== undefined) need('metal = ?', metal);
  if (thickness !== undefined) need('thickness = ?', inNanometres(thickness));
  need('length >= ?', inNanometres(Math.max(leastLength, leastWidth)));
  need('width >= ?', inNanometres(Math.min(leastLength, leastWidth)));
  return connection
    .prepare<unknown[], StockRow>(
      `SELECT * FROM stock WHERE ${conditions.join(' AND ')} ORDER BY number`,
    )
    .all(...values)
    .map(toStock);
}

/** A bound of a search may be anything. */
const inNanometres = (length: number): number => Math.round(length * 1_000_000);
