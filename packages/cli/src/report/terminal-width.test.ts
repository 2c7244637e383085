import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columnsOf, cutToColumns, keptApart, padToColumns } from './terminal-width.js';

// Unicode Standard Annex 11 (East Asian Width) and Technical Standard 51 (Emoji).
describe('the width of a text on a terminal', () => {
  test.each<[text: string, columns: number]>([
    ['Heart', 5],
    ['Herz \u00e4', 6],
    ['a\u0308', 1],
    ['\u30cf\u30fc\u30c8', 6],
    ['\uff21', 2],
    ['\uff71', 1],
    ['\u{1f36a}', 2],
    ['\u2764\ufe0f', 2],
    ['\u{1f1e8}\u{1f1ed}', 2],
    ['\u05dc\u05d1', 2],
    ['', 0],
  ])('%j takes %i', (text, columns) => {
    expect(columnsOf(text)).toBe(columns);
  });

  test('is that of its parts', () => {
    expect(cutToColumns('\u{1f36a}\u{1f36a}\u{1f36a}', 5)).toBe('\u{1f36a}\u{1f36a}');
    expect(cutToColumns('e\u0301e\u0301', 1)).toBe('e\u0301');
    expect(cutToColumns('Heart', 5)).toBe('Heart');
    expect(padToColumns('\u30cf', 4, 'left')).toBe('\u30cf  ');
    expect(padToColumns('\u30cf', 4, 'right')).toBe('  \u30cf');
  });

  test('is never more than asked for, and padding makes it just that', () => {
    const texts = fc.string({ unit: 'grapheme', maxLength: 40 });
    fc.assert(
      fc.property(texts, fc.nat({ max: 50 }), (text, columns) => {
        const cut = cutToColumns(text, columns);
        expect(text.startsWith(cut)).toBe(true);
        expect(columnsOf(cut)).toBeLessThanOrEqual(columns);
        expect(columnsOf(padToColumns(cut, columns, 'left'))).toBe(columns);
      }),
    );
  });
});

test('what runs from right to left keeps to itself, and to its width', () => {
  expect(keptApart('Heart')).toBe('Heart');
  expect(keptApart('\u05dc\u05d1')).toBe('\u05dc\u05d1\u200e');
  expect(columnsOf(keptApart('\u0642\u0644\u0628'))).toBe(columnsOf('\u0642\u0644\u0628'));
});
