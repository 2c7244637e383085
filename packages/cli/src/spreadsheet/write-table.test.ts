import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SEPARATORS } from './separator.js';
import { writeTable } from './write-table.js';

test('is read back by a reader of CSV, whatever the cells and the separator', () => {
  const cells = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 12 }),
    fc.constantFrom(...['"', ',', ';', '\t', '\r', '\n', '\r\n', ' ', 'a"b', '"a"']),
  );
  const tables = fc
    .integer({ min: 2, max: 5 })
    .chain((columns) =>
      fc.array(fc.array(cells, { minLength: columns, maxLength: columns }), { minLength: 1 }),
    );
  fc.assert(
    fc.property(tables, fc.constantFrom(...SEPARATORS), (rows, separator) => {
      const text = writeTable(rows, separator);
      expect(parse(text, { delimiter: separator, record_delimiter: '\r\n' })).toEqual(rows);
    }),
  );
});

test('ends every line with CR LF, and quotes what must be (RFC 4180, 2)', () => {
  const rows = [
    ['say "when", then', '2'],
    ['two\nlines', 'a;b'],
  ];
  expect(writeTable(rows)).toBe('"say ""when"", then",2\r\n"two\nlines",a;b\r\n');
  expect(writeTable(rows, ';')).toBe('"say ""when"", then";2\r\n"two\nlines";"a;b"\r\n');
});
