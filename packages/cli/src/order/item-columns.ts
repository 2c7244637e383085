import type { OutlineFamily, SizeField } from '@stripwright/strip-geometry';
import { itemFields } from './cutter-schema.js';
import { makingFieldsUnread } from './making-schema.js';
import { orderContext } from './order-context.js';

/** Fields of an item that hold more than a cell can. */
const NOT_IN_A_CELL = ['handwork'];

/** What the cell of `outline` says of a plain rectangle. */
export const PLAIN_BLANK = 'blank';

/** The columns that a table of items may have: those it starts with, then every other field of an item. */
export function itemColumns(families: readonly OutlineFamily[]): readonly string[] {
  const making = Object.keys(makingFieldsUnread(orderContext('', families)));
  const sizes = families.flatMap((family) => family.sizes.map(({ name }) => name));
  const all = [
    ...['name', 'outline', 'size', 'depth', 'quantity'],
    ...Object.keys(itemFields()),
    ...['svg', 'tolerance', 'blank'],
    ...making.filter((name) => !NOT_IN_A_CELL.includes(name)),
    ...sizes,
  ];
  return [...new Set(all)];
}

/**
 * The sizes of an outline that `size` may stand for: one where it has one main length,
 * two where it needs two. More than that are a choice, which is left to the writer.
 */
export function mainSizes({ sizes }: OutlineFamily): readonly SizeField[] {
  const lengths = sizes.filter(({ kind }) => kind === 'length');
  const required = lengths.filter((size) => size.required);
  return required.length > 0 ? required : lengths;
}

/** Whether its `size` is one length, or one after the other, and not a choice. */
export function hasMainSize(family: OutlineFamily): boolean {
  const main = mainSizes(family);
  return main.length === 1 || main.some(({ required }) => required);
}
