import { columnsOf, cutToColumns, keptApart, padToColumns } from './terminal-width.js';

export const REPORT_WIDTH = 80;
const GAP = '  ';
/** Of a column that gives way. */
const LEAST_WIDTH = 8;

export interface Column {
  readonly heading: string;
  readonly align: 'left' | 'right';
  /** True for a column that gives way, by cutting its texts short, where the page is narrow. The widest gives way first. */
  readonly shrinks?: boolean;
}

/** A table with a heading line, indented by two blanks, in at most 80 columns. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const lines = [columns.map(({ heading }) => heading), ...rows];
  const widths = columns.map((_, index) =>
    lines.reduce((widest, line) => Math.max(widest, columnsOf(line[index] ?? '')), 0),
  );
  const excess = widths.reduce((sum, width) => sum + width + GAP.length, 0) - REPORT_WIDTH;
  for (let left = excess; left > 0; left -= 1) {
    const widest = widestShrinking(columns, widths);
    if (widest === undefined) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return lines.map((line) => {
    const cells = line.map((cell, index) => {
      const width = widths[index] ?? 0;
      const text = keptApart(shorten(cell, width));
      return padToColumns(text, width, columns[index]?.align ?? 'left');
    });
    return `${GAP}${cells.join(GAP)}`.trimEnd();
  });
}

function widestShrinking(columns: readonly Column[], widths: readonly number[]) {
  const width = (index: number) => widths[index] ?? 0;
  return columns
    .flatMap(({ shrinks }, index) => (shrinks && width(index) > LEAST_WIDTH ? [index] : []))
    .sort((one, other) => width(other) - width(one))[0];
}

/** The text in at most `width` columns, with three dots for what is left out. */
export function shorten(text: string, width: number): string {
  if (columnsOf(text) <= width) return text;
  return `${cutToColumns(text, Math.max(0, width - 3)).trimEnd()}...`;
}

/**
 * Words broken into lines of at most 80 columns, the lines after the first indented. A word
 * that takes more than a line is broken too.
 */
export function wrap(text: string, indent = ''): readonly string[] {
  const lines: string[] = [];
  let line = /^ */.exec(text)?.[0] ?? '';
  for (const word of text.trimStart().split(' ')) {
    const longer = line.trim() === '' ? `${line}${word}` : `${line} ${word}`;
    if (columnsOf(longer) > REPORT_WIDTH && line.trim() !== '') {
      lines.push(line);
      line = `${indent}${word}`;
    } else {
      line = longer;
    }
    for (let rest = overhang(line); rest !== undefined; rest = overhang(line)) {
      lines.push(line.slice(0, line.length - rest.length));
      line = `${indent}${rest}`;
    }
  }
  return [...lines, line];
}

/** What goes beyond the page; undefined where nothing does. */
function overhang(line: string): string | undefined {
  if (columnsOf(line) <= REPORT_WIDTH) return undefined;
  return line.slice(cutToColumns(line, REPORT_WIDTH).length);
}
