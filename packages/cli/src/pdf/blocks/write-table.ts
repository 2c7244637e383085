import { INK } from '../../drawing/ink.js';
import type { Table } from '../../job-sheet/job-sheet.js';
import { columnWidths } from '../column-widths.js';
import { type Flow, type LineLook, lineHeight } from '../flow.js';
import { BODY, SMALL, STRONG } from '../look.js';

/** Between columns, and above and below the text of a row. */
const BETWEEN = 4;
const PAD = 0.5;
/** Rows that stay together at either end of a table: no sum, and no last row, stands on a page alone. */
const FIRST_TOGETHER = 2;
const LAST_TOGETHER = 3;

/** A table that goes on over pages with its headings again; no row is parted that a page holds. */
export function writeTable(flow: Flow, table: Table): void {
  const { columns, rows, caption, sums = 0 } = table;
  const isSum = (index: number) => index >= rows.length - sums;
  const look = (index: number) => (isSum(index) ? STRONG : BODY);
  const wide = (text: string, { size, bold }: LineLook) => flow.pen.width(text, size, bold);
  const widths = columnWidths(
    columns.map(({ heading }, column) => {
      const cells = rows.map((row, index) => wide(row[column] ?? '', look(index)));
      return Math.max(wide(heading, STRONG), ...cells);
    }),
    flow.width - BETWEEN * (columns.length - 1),
  );
  const layOut = (cells: readonly string[], own: LineLook) =>
    columns.map((_, column) => flow.lines(cells[column] ?? '', widths[column] ?? 0, own));
  const heightOf = (cells: readonly (readonly string[])[]) =>
    Math.max(1, ...cells.map((lines) => lines.length)) * lineHeight(BODY) + 2 * PAD;
  const total = widths.reduce((sum, width) => sum + width, 0) + BETWEEN * (columns.length - 1);
  const ruled = (thick: number) => {
    const { left, top, document } = flow;
    document.undash().lineWidth(thick);
    document
      .moveTo(left, top)
      .lineTo(left + total, top)
      .stroke(thick > 0.2 ? INK.text : INK.soft);
  };
  const writeRow = (cells: readonly (readonly string[])[], own: LineLook) => {
    let left = flow.left;
    cells.forEach((lines, column) => {
      const width = widths[column] ?? 0;
      lines.forEach((line, index) => {
        const spare = columns[column]?.align === 'right' ? width - wide(line, own) : 0;
        flow.put(line, left + spare, flow.top + PAD + index * lineHeight(BODY), own);
      });
      left += width + BETWEEN;
    });
    flow.top += heightOf(cells);
  };
  const headings = layOut(
    columns.map(({ heading }) => heading),
    STRONG,
  );
  const writeHeadings = () => {
    writeRow(headings, STRONG);
    ruled(0.4);
  };
  const cells = rows.map((row, index) => layOut(row, look(index)));
  const together = (from: number, to: number) =>
    cells.slice(from, to).reduce((sum, row) => sum + heightOf(row), 0);
  const ofPage = flow.pageRoom - heightOf(headings);
  /** The height that must fit where a row is written: its own, or that of the last rows. */
  const needed = (index: number) => {
    const own = together(index, index + 1);
    const last = index === rows.length - LAST_TOGETHER ? together(index, rows.length) : own;
    return last > ofPage ? own : last;
  };
  const captioned = caption === undefined ? [] : flow.lines(caption, flow.width, SMALL);
  const above = captioned.length * lineHeight(SMALL) + heightOf(headings);
  const first = together(0, rows.length <= LAST_TOGETHER ? rows.length : FIRST_TOGETHER);
  // A caption and headings without a row below them would tell nothing.
  flow.need(Math.min(above + first, flow.pageRoom));
  if (caption !== undefined) flow.paragraph(caption, SMALL);
  writeHeadings();
  cells.forEach((row, index) => {
    if (index > 0 && !flow.fits(needed(index))) {
      flow.newPage();
      writeHeadings();
    }
    if (sums > 0 && index === rows.length - sums) ruled(0.4);
    writeRow(row, look(index));
    ruled(0.12);
  });
}
