import { CsvError } from 'csv-parse';
import { parse } from 'csv-parse/sync';
import type { Complaint } from '../faults/fault.js';
import { foldSpelling, nearestSpelling } from '../faults/nearest-spelling.js';
import { BYTE_ORDER_MARK } from './byte-order-mark.js';
import { SEPARATORS, type Separator } from './separator.js';

/** A table as it was read: what its cells say, without what they mean. */
export interface Table<Name extends string> {
  readonly separator: Separator;
  /** Where the headings stand; a spreadsheet's number, from 1. */
  readonly headRow: number;
  /** The columns that are known, by their names. */
  readonly columns: ReadonlyMap<Name, TableColumn>;
  readonly rows: readonly TableRow<Name>[];
  readonly faults: readonly TableFault[];
}

export interface TableColumn {
  /** From 0. */
  readonly index: number;
  /** As it is written. */
  readonly heading: string;
}

export interface TableRow<Name extends string> {
  /** The number that a spreadsheet shows beside it, from 1, blank rows counted. */
  readonly row: number;
  /** The line of the text that it begins in, from 1: a cell may hold line breaks. */
  readonly line: number;
  /** Trimmed; empty where a row ends before its column. */
  readonly cells: ReadonlyMap<Name, string>;
}

/** What is wrong with a table, and where. */
export interface TableFault {
  readonly complaint: Complaint;
  readonly row: number;
  /** From 0; absent where it is the row as a whole. */
  readonly column?: number;
  readonly heading?: string;
  readonly found?: string;
}

export type TableOutcome<Name extends string> =
  | { readonly ok: true; readonly table: Table<Name> }
  | { readonly ok: false; readonly complaint: Complaint };

/**
 * Reads a table as spreadsheets write them: cells parted by commas, semicolons or tabs,
 * in quotes or not, lines ended in any way, blank rows anywhere, columns in any order,
 * with a byte order mark and a first line such as `sep=;` or without. A heading that is
 * misspelt is a fault, and its column is read as the one that was probably meant, so that
 * its rows are not faulted for lacking it.
 *
 * @param known the names of the columns that there may be
 */
export function readTable<Name extends string>(
  written: string,
  known: readonly Name[],
): TableOutcome<Name> {
  const { text, told } = withoutPreamble(written);
  const separator = told ?? separatorOf(text, known);
  const read = records(text, separator);
  if (!read.ok) return read;
  const before = told === undefined ? 0 : 1;
  const filled = read.records
    .map(({ line, cells }, index) => ({ row: index + 1 + before, line: line + before, cells }))
    .filter(({ cells }) => cells.some(isFilled));
  const [head, ...body] = filled;
  if (head === undefined) return fail({ code: 'empty table', known });
  const { columns, faults } = readHeadings(head, known);
  const rows = body.map(({ row, line, cells }) => ({
    row,
    line,
    cells: new Map([...columns].map(([name, { index }]) => [name, (cells[index] ?? '').trim()])),
  }));
  const stray = body.flatMap((row) => strayCells(row, head.cells));
  return {
    ok: true,
    table: { separator, headRow: head.row, columns, rows, faults: [...faults, ...stray] },
  };
}

const fail = (complaint: Complaint) => ({ ok: false, complaint }) as const;

const isFilled = (cell: string) => cell.trim() !== '';

interface Row {
  readonly row: number;
  readonly line: number;
  readonly cells: readonly string[];
}

/** Without a byte order mark, and without the line by which some spreadsheets tell the separator. */
function withoutPreamble(written: string): { readonly text: string; readonly told?: Separator } {
  const text = (written.startsWith(BYTE_ORDER_MARK) ? written.slice(1) : written).replaceAll(
    /\r\n?/g,
    '\n',
  );
  const line = /^"?sep=(.)"?\n/i.exec(text);
  const told = SEPARATORS.find((separator) => separator === line?.[1]);
  return line === null || told === undefined
    ? { text }
    : { text: text.slice(line[0].length), told };
}

/** The one that parts the most headings that are known. */
function separatorOf(text: string, known: readonly string[]): Separator {
  // The first line that says something.
  const head = /^[\s,;]*[^\n]*/.exec(text)?.[0] ?? '';
  const scores = SEPARATORS.map((separator) => {
    const cells = head.split(separator).map((cell) => cell.replaceAll('"', ''));
    const right = cells.filter((cell) => columnNamed(cell, known) !== undefined);
    return { separator, known: right.length, cells: cells.length };
  });
  const [best] = scores.sort((one, other) => other.known - one.known || other.cells - one.cells);
  return best?.separator ?? ',';
}

function columnNamed<Name extends string>(
  heading: string,
  known: readonly Name[],
): Name | undefined {
  return known.find((name) => foldSpelling(heading) === foldSpelling(name));
}

/** A record, and how many lines there are up to its end. */
interface Parsed {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

function records(text: string, separator: Separator) {
  let end = 0;
  try {
    const read = parse(text, {
      delimiter: separator,
      record_delimiter: '\n',
      info: true,
      relax_column_count: true,
      // Inches are written with quotes.
      relax_quotes: true,
    }) as unknown as readonly Parsed[];
    const records = read.map(({ record, info }) => {
      const line = end + 1;
      end = info.lines;
      return { line, cells: record };
    });
    return { ok: true, records } as const;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const reason =
      error.code === 'CSV_QUOTE_NOT_CLOSED'
        ? 'a cell begins with a quote that never ends'
        : (error.message.split('\n')[0] ?? error.code);
    return fail({ code: 'not CSV', reason });
  }
}

function readHeadings<Name extends string>({ row, cells }: Row, known: readonly Name[]) {
  const columns = new Map<Name, TableColumn>();
  const faults: TableFault[] = [];
  const misspelt: { readonly name: Name; readonly column: TableColumn }[] = [];
  cells.forEach((cell, index) => {
    const heading = cell.trim();
    // Without a heading, its cells tell whether it is a column at all.
    if (heading === '') return;
    const name = columnNamed(heading, known);
    const complain = (complaint: Complaint) =>
      faults.push({ complaint, row, column: index, heading });
    if (name === undefined) {
      const nearest = nearestSpelling(heading, known);
      const meant = known.find((one) => one === nearest);
      if (meant !== undefined) misspelt.push({ name: meant, column: { index, heading } });
      complain({ code: 'unknown column', known, nearest });
    } else if (columns.has(name)) {
      complain({ code: 'column twice' });
    } else {
      columns.set(name, { index, heading });
    }
  });
  for (const { name, column } of misspelt) {
    if (!columns.has(name)) columns.set(name, column);
  }
  return { columns, faults };
}

function strayCells({ row, cells }: Row, headings: readonly string[]): readonly TableFault[] {
  const index = cells.findIndex((cell, at) => isFilled(cell) && !isFilled(headings[at] ?? ''));
  if (index < 0) return [];
  const found = cells.filter((cell, at) => isFilled(cell) && !isFilled(headings[at] ?? ''));
  return [
    {
      complaint: { code: 'cells without a column' },
      row,
      column: index,
      found: found.join(', '),
    },
  ];
}
