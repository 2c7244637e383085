import { expect, test } from 'vitest';
import { BYTE_ORDER_MARK } from '../../spreadsheet/byte-order-mark.js';
import { COLUMNS } from './columns.js';
import { isRackTable } from './is-rack-table.js';
import { writeRackCsv } from './write-csv.js';

test.each([true, false])('a table that was written is one, with semicolons: %s', (semicolons) => {
  const text = writeRackCsv([], { units: 'in', semicolons });
  expect(isRackTable(text)).toBe(true);
  expect(isRackTable(`${BYTE_ORDER_MARK}${text}\r\n"300`)).toBe(true);
});

test('so is one with its columns in another order and case, and one more', () => {
  expect(isRackTable(`${[...COLUMNS].reverse().join(',').toUpperCase()},notes\n`)).toBe(true);
});

test.each([
  ['nothing', ''],
  ['a table that lacks a column', COLUMNS.slice(1).join(',')],
  ['a table with a heading misspelt', COLUMNS.join(',').replace('length', 'legnth')],
  ['headings in a second line', `rack\n${COLUMNS.join(',')}`],
  ['a quote that never ends', `"${COLUMNS.join(',')}`],
])('%s is none', (_what, text) => {
  expect(isRackTable(text)).toBe(false);
});
