import { amountOf } from '../../money.js';
import type { Correction, MergeLine, MergeResult, NewStock, RackStock } from '../rack.js';
import { RackError } from '../rack-error.js';
import { type Ledger, type SizeColumns, sizeColumns } from './ledger.js';
import type { StockRow } from './stock-rows.js';

/** @returns the mark of each, in order */
export function addStock(ledger: Ledger, stock: readonly NewStock[]): readonly string[] {
  return stock.map((each) => ledger.row(ledger.put(each, { deed: 'added' })).mark);
}

/** Takes things away that no plan uses. */
export function removeStock(ledger: Ledger, mark: string, count: number, reason: string): void {
  const row = ledger.rowMarked(mark);
  if (!Number.isSafeInteger(count) || count < 1) {
    throw new RackError('bad value', `count must be a whole number of at least 1; found ${count}`);
  }
  if (row.count < count) {
    throw new RackError(
      'not enough',
      row.count === 0
        ? `${mark} is gone already; see rack history ${mark}`
        : `${mark}: ${row.count} lie there, not ${count}`,
    );
  }
  if (row.count - row.promised < count) {
    throw new RackError('promised', `${mark} is promised to a held plan; let that go first`);
  }
  ledger.enter({ stock: row.number, deed: 'removed', change: -count, note: reason });
}

/** Changes what the rack says of a thing. */
export function correctStock(ledger: Ledger, mark: string, correction: Correction): RackStock {
  const row = ledger.rowMarked(mark);
  if (row.count === 0 && (row.kind === 'offcut' || correction.count === undefined)) {
    throw new RackError('not enough', `${mark} is gone; see rack history ${mark}`);
  }
  const said = ledger.stock(row.number);
  const merged = { ...said, ...definedOf(correction) };
  const { thickness, rolled, bookValue } = merged;
  const size = sizeColumns({
    length: merged.length,
    width: merged.width,
    metal: merged.metal,
    ...(typeof thickness === 'number' ? { thickness } : {}),
    ...(typeof rolled === 'string' ? { rolled } : {}),
  });
  const change = merged.count - row.count;
  refuseCount(row, merged.count);
  const notes = [
    ...changesOf(said, merged),
    ...(change === 0 ? [] : [`count ${row.count} to ${merged.count}`]),
  ];
  if (notes.length === 0) return said;
  if (isResized(row, size)) refuseResize(ledger, row, size);
  ledger
    .prepare(
      `UPDATE stock SET name = ?, length = ?, width = ?, metal = ?, thickness = ?, rolled = ?,
         place = ?, origin = ?, book_value = ? WHERE number = ?`,
    )
    .run(
      merged.name,
      size.length,
      size.width,
      size.metal,
      size.thickness,
      size.rolled,
      merged.place,
      merged.origin,
      bookValue ?? null,
      row.number,
    );
  ledger.enter({ stock: row.number, deed: 'corrected', change, note: notes.join('; ') });
  return ledger.stock(row.number);
}

/** Makes the rack agree with an edited list; every line that cannot be taken is told. */
export function mergeStock(ledger: Ledger, lines: readonly MergeLine[]): MergeResult {
  const added: string[] = [];
  const corrected: string[] = [];
  const faults: string[] = [];
  let unchanged = 0;
  for (const { line, mark, ...stock } of lines) {
    try {
      if (mark === undefined) {
        added.push(...addStock(ledger, [stock]));
        continue;
      }
      const before = ledger.rowMarked(mark);
      if (before.kind !== stock.kind) {
        throw new RackError('bad value', `${mark} is ${kindText(before.kind)}`);
      }
      const { kind, thickness = null, rolled = null, bookValue = null, ...rest } = stock;
      const after = correctStock(ledger, mark, { ...rest, thickness, rolled, bookValue });
      if (JSON.stringify(before) === JSON.stringify(ledger.rowMarked(after.mark))) unchanged++;
      else corrected.push(mark);
    } catch (error) {
      if (!(error instanceof RackError)) throw error;
      faults.push(`line ${line}: ${error.message}`);
    }
  }
  if (faults.length > 0) throw new RackError('bad value', faults.join('\n'));
  return { added, corrected, unchanged };
}

const kindText = (kind: 'offcut' | 'sheets') => (kind === 'offcut' ? 'an offcut' : 'whole sheets');

const plain = (value: unknown) => (value === '' ? 'none' : String(value));
const inMillimetres = (value: unknown) => `${value} mm`;

/** What the history calls each field, and how it writes it. */
const TOLD = {
  name: ['name', plain],
  length: ['length', inMillimetres],
  width: ['width', inMillimetres],
  metal: ['metal', plain],
  thickness: ['thickness', inMillimetres],
  rolled: ['rolled', plain],
  place: ['place', plain],
  origin: ['origin', plain],
  bookValue: ['worth', (value: unknown) => amountOf(Number(value)).toFixed(2)],
} as const;
type ToldField = keyof typeof TOLD;

/** What differs, as the history tells it. */
function changesOf(before: RackStock, after: { readonly [Field in ToldField]?: unknown }) {
  const fields = Object.keys(TOLD) as ToldField[];
  return fields.flatMap((field) => {
    const [word, written] = TOLD[field];
    const [from, to] = [before[field] ?? undefined, after[field] ?? undefined];
    const text = (value: unknown) => (value === undefined ? 'unknown' : written(value));
    return from === to ? [] : [`${word} ${text(from)} to ${text(to)}`];
  });
}

function definedOf(correction: Correction): Correction {
  return Object.fromEntries(Object.entries(correction).filter(([, value]) => value !== undefined));
}

function refuseCount({ mark, kind, promised }: StockRow, count: number): void {
  if (!Number.isSafeInteger(count) || count < 0 || (kind === 'offcut' && count !== 1)) {
    const what = kind === 'offcut' ? '1 of an offcut' : 'a whole number';
    throw new RackError('bad value', `${mark}: the count must be ${what}; found ${count}`);
  }
  if (count < promised) {
    throw new RackError('promised', `${mark}: ${promised} are promised to held plans`);
  }
}

function isResized(row: StockRow, size: SizeColumns): boolean {
  return (
    row.length !== size.length ||
    row.width !== size.width ||
    row.metal !== size.metal ||
    row.thickness !== size.thickness ||
    row.rolled !== size.rolled
  );
}

function refuseResize(ledger: Ledger, row: StockRow, size: SizeColumns): void {
  const { mark, kind, promised } = row;
  if (promised > 0) {
    throw new RackError('promised', `${mark} is promised to a held plan; let that go first`);
  }
  const other = kind === 'sheets' ? ledger.sheetsIn(size) : undefined;
  if (other !== undefined && other !== row.number) {
    const there = ledger.row(other).mark;
    throw new RackError(
      'bad value',
      `${mark}: sheets of that size lie under ${there}; count those`,
    );
  }
}
