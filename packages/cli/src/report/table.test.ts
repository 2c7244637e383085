import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shorten, table, wrap } from './table.js';
import { columnsOf } from './terminal-width.js';

describe('tables', () => {
  test('align, and cut the texts of the column that gives way', () => {
    const lines = table(
      [
        { heading: 'No', align: 'right' },
        { heading: 'Name', align: 'left', shrinks: true },
        { heading: 'Length', align: 'right' },
      ],
      [
        ['1', 'Heart', '12 21/32'],
        ['10', 'x'.repeat(90), '9'],
      ],
    );
    expect(lines).toEqual([
      `  No  Name${' '.repeat(60)}    Length`,
      `   1  Heart${' '.repeat(59)}  12 21/32`,
      `  10  ${'x'.repeat(61)}...         9`,
    ]);
    for (const line of lines) expect(line.length).toBe(80);
  });

  test('stay within 80 columns whatever the names', () => {
    const cell = fc.string({ maxLength: 60, unit: 'grapheme' });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell)), (rows) => {
        const lines = table(
          [
            { heading: 'Name', align: 'left', shrinks: true },
            { heading: 'Size', align: 'right' },
          ],
          rows,
        );
        for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(80);
      }),
    );
  });

  test('align wide signs, and keep names that run from right to left from taking figures along', () => {
    const lines = table(
      [
        { heading: 'Name', align: 'left' },
        { heading: 'Length', align: 'right' },
      ],
      [
        ['\u30cf\u30fc\u30c8', '12'],
        ['\u05dc\u05d1', '9'],
        ['Heart', '4'],
      ],
    );
    expect(lines.slice(1)).toEqual([
      '  \u30cf\u30fc\u30c8      12',
      '  \u05dc\u05d1\u200e           9',
      '  Heart        4',
    ]);
  });
});

test('shortened texts show that something is left out', () => {
  expect(shorten('Heart', 5)).toBe('Heart');
  expect(shorten('Heart, large', 8)).toBe('Heart...');
});

test('wrapping breaks a word that takes more than a line', () => {
  const word = '\u30cf'.repeat(60);
  const lines = wrap(`  Spare: ${word} 3`, '    ');
  expect(lines).toEqual(['  Spare:', `    ${word.slice(0, 38)}`, `    ${word.slice(38)} 3`]);
});

test('wrapping keeps every word, the first indent, and 80 columns', () => {
  const words = fc.array(fc.stringMatching(/^[a-z]{1,20}$/), { minLength: 1, maxLength: 60 });
  fc.assert(
    fc.property(words, (list) => {
      const lines = wrap(`  ${list.join(' ')}`, '    ');
      expect(lines.join(' ').trim().split(/ +/)).toEqual(list);
      expect(lines[0]).toMatch(/^ {2}[a-z]/);
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    }),
  );
});
