import type { ShopUnits } from '../length/unit.js';
import { type Column, table } from '../report/table.js';
import type { RackSize } from './rack.js';
import { metalWords, sizeWords } from './stock-words.js';

const COLUMNS: readonly Column[] = [
  { heading: 'Mark', align: 'left' },
  { heading: 'Size', align: 'left' },
  { heading: 'Metal', align: 'left', shrinks: true },
];

/** What is to be written on which metal. */
export function marksTable(
  stock: readonly (RackSize & { readonly mark: string })[],
  units: ShopUnits,
): readonly string[] {
  const rows = stock.map((one) => [one.mark, sizeWords(one, units), metalWords(one, units)]);
  return ['Write on the metal:', ...table(COLUMNS, rows)];
}
