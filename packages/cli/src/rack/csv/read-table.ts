import { CsvError } from 'csv-parse';
import { parse } from 'csv-parse/sync';
import type { Fault } from '../../faults/fault.js';
import { foldSpelling, nearestSpelling } from '../../faults/nearest-spelling.js';
import { COLUMNS, type ColumnName } from './columns.js';
import { SEPARATORS, type Separator } from './separator.js';

/** A table as it was read: what its cells say, without what they mean. */
export interface Table {
  readonly separator: Separator;
  readonly has: ReadonlySet<ColumnName>;
  readonly rows: readonly TableRow[];
  readonly faults: readonly Fault[];
}

export interface TableRow {
  /** Where it begins, from 1. */
  readonly line: number;
  /** Trimmed; empty where a line ends before its column. */
  readonly cells: ReadonlyMap<ColumnName, string>;
}

/** What a library found that no table can have. */
export class NotATable extends Error {
  readonly fault: Fault;

  constructor(fault: Fault) {
    super('not a table');
    this.fault = fault;
  }
}

/**
 * Reads a table as spreadsheets write them: cells parted by commas, semicolons or tabs,
 * in quotes or not, lines ended in any way, blank lines anywhere, columns in any order.
 * @throws NotATable where there is none
 */
export function readTable(written: string): Table {
  const text = written.replaceAll(/\r\n?/g, '\n');
  const separator = separatorOf(text);
  const [head, ...body] = records(text, separator).filter(({ cells }) => cells.some(isFilled));
  if (head === undefined)
    throw new NotATable({ complaint: { code: 'empty table', known: COLUMNS }, path: [] });
  const columns = head.cells.map(columnNamed);
  const faults = [
    ...headingFaults(head, columns),
    ...body.flatMap((row) => strayCells(row, head.cells)),
  ];
  const rows = body.map(({ line, cells }) => ({
    line,
    cells: new Map(
      columns.flatMap((column, index) =>
        column === undefined ? [] : [[column, (cells[index] ?? '').trim()] as const],
      ),
    ),
  }));
  const has = new Set(columns.flatMap((column) => column ?? []));
  return { separator, has, rows, faults };
}

/** Whether a text is such a table, with all columns of a rack. */
export function isRackTable(text: string): boolean {
  const [head = ''] = text.replace(/^\uFEFF/, '').split(/\r?\n/, 1);
  const separator = separatorOf(head);
  const cells = head.split(separator).map((cell) => columnNamed(cell.replaceAll('"', '')));
  return COLUMNS.every((column) => cells.includes(column));
}

interface Line {
  readonly line: number;
  readonly cells: readonly string[];
}

const isFilled = (cell: string) => cell.trim() !== '';

/** The one that parts the most headings that are known. */
function separatorOf(text: string): Separator {
  // The first line that says something.
  const head = /^[\s,;]*[^\n]*/.exec(text)?.[0] ?? '';
  const scores = SEPARATORS.map((separator) => {
    const cells = head.split(separator).map((cell) => cell.replaceAll('"', ''));
    const known = cells.filter((cell) => columnNamed(cell) !== undefined);
    return { separator, known: known.length, cells: cells.length };
  });
  const [best] = scores.sort((one, other) => other.known - one.known || other.cells - one.cells);
  return best?.separator ?? ',';
}

function columnNamed(heading: string): ColumnName | undefined {
  return COLUMNS.find((column) => foldSpelling(heading).replaceAll(' ', '') === column);
}

function records(text: string, separator: Separator): readonly Line[] {
  let end = 0;
  try {
    const read = parse(text, {
      delimiter: separator,
      record_delimiter: '\n',
      bom: true,
      info: true,
      relax_column_count: true,
      // Inches are written with quotes.
      relax_quotes: true,
    }) as unknown as readonly {
      readonly record: readonly string[];
      readonly info: { readonly lines: number };
    }[];
    return read.map(({ record, info }) => {
      const line = end + 1;
      end = info.lines;
      return { line, cells: record };
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const reason =
      error.code === 'CSV_QUOTE_NOT_CLOSED'
        ? 'a cell begins with a quote that never ends'
        : error.message;
    throw new NotATable({ complaint: { code: 'not CSV', reason }, path: [] });
  }
}

function headingFaults(
  { line, cells }: Line,
  columns: readonly (ColumnName | undefined)[],
): readonly Fault[] {
  return cells.flatMap((heading, index): readonly Fault[] => {
    const column = columns[index];
    const path = [heading.trim()];
    if (column !== undefined) {
      return columns.indexOf(column) === index
        ? []
        : [{ complaint: { code: 'column twice' }, path, line }];
    }
    // Without a heading, its cells tell whether it is a column at all.
    if (!isFilled(heading)) return [];
    const nearest = nearestSpelling(heading, COLUMNS);
    return [{ complaint: { code: 'unknown column', known: COLUMNS, nearest }, path, line }];
  });
}

function strayCells({ line, cells }: Line, headings: readonly string[]): readonly Fault[] {
  const stray = cells.filter((cell, index) => isFilled(cell) && !isFilled(headings[index] ?? ''));
  return stray.length === 0
    ? []
    : [{ complaint: { code: 'cells without a column' }, path: [], line, found: stray.join(', ') }];
}
