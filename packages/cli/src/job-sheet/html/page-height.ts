import type { Block, Section } from '../job-sheet.js';
import { fillsPage, paperSize } from './paper-size.js';

/** Roughly, in millimetres of paper. */
const ROW = 5.2;
const LINE = 4.6;
const STEP = 9;
/** How many letters a line holds across the page, and in a wide column of a table. */
const LETTERS = 105;
const COLUMN_LETTERS = 60;
/** What is surely less than a page. */
const MOST = 215;

/**
 * Whether a section should be printed on one page, whatever comes before it: it is short, and
 * has a table that its steps are done by. Steps alone may go on overleaf.
 */
export function staysTogether({ blocks }: Section): boolean {
  if (blocks.some((block) => block.kind === 'picture' && fillsPage(block))) return false;
  if (!blocks.some(({ kind }) => kind === 'table')) return false;
  return blocks.reduce((sum, block) => sum + heightOf(block), 20) <= MOST;
}

function heightOf(block: Block): number {
  switch (block.kind) {
    case 'words':
      return lines(block.text, LETTERS) * LINE;
    case 'caution':
      return 8 + block.lines.reduce((sum, line) => sum + lines(line, LETTERS) * LINE, 0);
    case 'table':
      return block.rows.reduce(
        (sum, row) => sum + Math.max(...row.map((cell) => lines(cell, COLUMN_LETTERS))) * ROW,
        3 * ROW,
      );
    case 'steps':
      return block.steps.reduce(
        (sum, { text, detail = '' }) =>
          sum + STEP + lines(`${text}${detail}`, LETTERS) * LINE - LINE,
        0,
      );
    case 'picture':
      return paperSize(block).height + 6;
  }
}

const lines = (text: string, letters: number): number =>
  Math.max(1, Math.ceil(text.length / letters));
