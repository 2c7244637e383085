import type { OutlineFamily } from '@stripwright/strip-geometry';
import type { Cell, Complaint, Fault, FieldPath } from '../faults/fault.js';
import { foldSpelling } from '../faults/nearest-spelling.js';
import type { Reading } from '../faults/reading.js';
import { decimalPoint } from '../spreadsheet/decimal-point.js';
import { readTable, type Table, type TableRow } from '../spreadsheet/read-table.js';
import { cellAt, faultAt } from '../spreadsheet/table-place.js';
import { familyMeant } from './family-spelt.js';
import { hasMainSize, itemColumns, mainSizes, PLAIN_BLANK } from './item-columns.js';
import type { RawValue } from './yaml-tree.js';

/** A table of items that an order names, as it was found. */
export interface TableFile {
  /** Its name as the user would give it. */
  readonly file: string;
  readonly text: Reading<string>;
  /** True where the order names it, and not the user. */
  readonly isOfOrder?: boolean;
}

/** Items that a table holds, as an order would write them, and where each part stands. */
export interface TableItems {
  readonly items: readonly RawValue[];
  readonly faults: readonly Fault[];
  /** The place and heading of a field of an item, its path without `items`. */
  place(path: FieldPath): Pick<Fault, 'cell' | 'path'>;
  /** True where no row could say what a field is, for want of a column. */
  lacks(field: string): boolean;
  /** Where a column that is lacking ought to stand. */
  readonly head: Cell;
}

/** Columns whose texts have commas of their own. */
const TEXTS = ['name', 'outline', 'svg', 'corners'];

/** An order of a few hundred items takes some 30 kB. */
const LONGEST_TEXT = 1_000_000;

/**
 * Reads a table of items. What a row says is left to the order's schema; here it is only
 * told which field each cell is.
 */
export function readTableItems(
  text: string,
  file: string,
  families: readonly OutlineFamily[],
): TableItems | { readonly complaint: Complaint } {
  if (text.length > LONGEST_TEXT) {
    return { complaint: { code: 'not CSV', reason: 'longer than a million characters' } };
  }
  const read = readTable(text, itemColumns(families));
  if (!read.ok) return read;
  const { table } = read;
  const rows = table.rows.map((row) => itemOf(row, table, families));
  const columnOf = (field: string, from: ReadonlyMap<string, string>) =>
    table.columns.get(from.get(field) ?? field);
  const faults = [
    ...table.faults.map((fault) => faultAt(file, fault)),
    ...rows.flatMap(({ complaint }, index): readonly Fault[] => {
      const column = table.columns.get('size');
      const row = table.rows[index]?.row ?? table.headRow;
      if (complaint === undefined || column === undefined) return [];
      return [{ complaint, path: [column.heading], cell: cellAt(file, row, column.index) }];
    }),
  ];
  return {
    items: rows.map(({ item }) => item),
    faults,
    head: cellAt(file, table.headRow),
    lacks: (field) => !table.columns.has(field),
    place: ([index, field]) => {
      const row = typeof index === 'number' ? table.rows[index] : undefined;
      if (row === undefined || typeof index !== 'number')
        return { path: [], cell: cellAt(file, table.headRow) };
      if (field === undefined) return { path: [], cell: cellAt(file, row.row) };
      const column = columnOf(String(field), rows[index]?.from ?? new Map());
      return { path: [column?.heading ?? field], cell: cellAt(file, row.row, column?.index) };
    },
  };
}

interface RowItem {
  readonly item: Readonly<Record<string, RawValue>>;
  /** The columns that fields were taken from which have none of their own. */
  readonly from: ReadonlyMap<string, string>;
  /** About its size. */
  readonly complaint?: Complaint;
}

/** A row as an entry of `items`; empty cells are fields that are left out. */
function itemOf(
  { cells }: TableRow<string>,
  { separator }: Table<string>,
  families: readonly OutlineFamily[],
): RowItem {
  const item: Record<string, RawValue> = {};
  for (const [column, cell] of cells) {
    if (cell === '' || column === 'size') continue;
    item[column] = TEXTS.includes(column) ? cell : decimalPoint(cell, separator);
  }
  if (typeof item.corners === 'string') item.corners = cornersOf(item.corners);
  const isBlank = foldSpelling(cells.get('outline') ?? '') === PLAIN_BLANK;
  if (isBlank) delete item.outline;
  const written = decimalPoint(cells.get('size') ?? '', separator);
  // A blank without its size lacks `blank`, not an outline.
  if (written === '') return { item: isBlank ? { blank: '', ...item } : item, from: new Map() };
  return withSize(item, written, isBlank, families);
}

/** `0, 0; 3, 0; 3, 2` as an order has it. */
function cornersOf(text: string): RawValue {
  const pairs = text.split(';').filter((pair) => pair.trim() !== '');
  return pairs.map((pair) => pair.split(','));
}

function withSize(
  item: Readonly<Record<string, RawValue>>,
  size: string,
  isBlank: boolean,
  families: readonly OutlineFamily[],
): RowItem {
  const sides = size.split(/[x\u00d7]/i);
  const { outline } = item;
  const named = typeof outline === 'string' ? outline : undefined;
  const family = familyMeant(named ?? '', families);
  const plain = isBlank || (named === undefined && item.svg === undefined && sides.length === 2);
  if (plain) return put(item, ['blank'], [size]);
  if (item.svg !== undefined) return put(item, ['across'], [size]);
  // An outline that is not known is told of by the schema, and its size means nothing.
  if (family === undefined) return { item, from: new Map() };
  const names = mainSizes(family).map(({ name }) => name);
  if (!hasMainSize(family)) {
    const complaint = { code: 'no main size', outline: family.name, known: names } as const;
    return { item, from: new Map(), complaint };
  }
  return sides.length === 2 && names.length === 2
    ? put(item, names, bothInOneUnit(sides))
    : put(item, names.slice(0, 1), [size]);
}

/** In `3 x 2 in` the unit holds for both. */
function bothInOneUnit(sides: readonly string[]): readonly string[] {
  const [first = '', second = ''] = sides.map((side) => side.trim());
  const unit = (text: string) => /[a-z"\u2033\u201d]+$/i.exec(text)?.[0] ?? '';
  return [
    unit(first) === '' ? `${first} ${unit(second)}`.trim() : first,
    unit(second) === '' ? `${second} ${unit(first)}`.trim() : second,
  ];
}

function put(
  item: Readonly<Record<string, RawValue>>,
  names: readonly string[],
  texts: readonly string[],
): RowItem {
  const other = names.find((name) => item[name] !== undefined);
  if (other !== undefined) {
    return { item, from: new Map(), complaint: { code: 'size twice', other } };
  }
  const sizes = Object.fromEntries(names.map((name, index) => [name, texts[index] ?? '']));
  return { item: { ...item, ...sizes }, from: new Map(names.map((name) => [name, 'size'])) };
}
