import { textWidth } from '../../drawing/measure-text.js';
import type { Table } from '../job-sheet.js';
import { element, type Html } from './element.js';

/** Tables of more rows may be broken between pages. */
const SHORT_TABLE = 24;
/** In heights of its letters: columns that may take more room than this break their lines. */
const WORDS = 7;
/** Headings are set so much smaller. */
const HEADING = 0.85;
/** What a phone of 360 px has room for, and the gap that every column takes of it. */
const PHONE = 19;
const GAP = 0.6;

/**
 * A table. Where it is too wide for a phone, its rows become cards there; its roles are told,
 * since they would be lost with the looks of a table.
 */
export function writeTable({ caption, columns, rows, sums = 0 }: Table): Html {
  const widths = columns.map(({ heading }, column) =>
    Math.max(HEADING * textWidth(heading), ...rows.map((row) => textWidth(row[column] ?? ''))),
  );
  const sides = columns.map(({ align }, column) =>
    classes({ figure: align === 'right', words: (widths[column] ?? 0) > WORDS }),
  );
  const taken = widths.reduce((sum, width) => sum + Math.min(width, WORDS) + GAP, 0);
  const head = columns.map(({ heading }, column) =>
    element('th', { scope: 'col', role: 'columnheader', class: sides[column] }, heading),
  );
  const line = (row: readonly string[]) =>
    columns.map(({ heading }, column) => {
      const text = row[column] ?? '';
      const attributes = { role: 'cell', class: sides[column], 'data-heading': heading };
      return element('td', attributes, text === '' ? [] : element('bdi', {}, text));
    });
  return element(
    'table',
    {
      role: 'table',
      class: classes({
        short: rows.length <= SHORT_TABLE,
        cards: taken > PHONE,
        figures: widths.every((width) => width <= WORDS),
      }),
    },
    caption === undefined ? [] : element('caption', {}, caption),
    element('thead', { role: 'rowgroup' }, element('tr', { role: 'row' }, head)),
    element(
      'tbody',
      { role: 'rowgroup' },
      rows.map((row, index) =>
        element(
          'tr',
          { role: 'row', class: classes({ sum: index >= rows.length - sums }) },
          line(row),
        ),
      ),
    ),
  );
}

function classes(names: Readonly<Record<string, boolean>>): string | undefined {
  const worn = Object.keys(names).filter((name) => names[name] === true);
  return worn.length === 0 ? undefined : worn.join(' ');
}
