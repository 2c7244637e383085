import { expect, test } from 'vitest';
import { columnLetter } from './column-letter.js';

// As spreadsheets count their columns (ECMA-376-1, 18.18.7 has XFD as the 16384th, from memory).
test.each([
  [0, 'A'],
  [25, 'Z'],
  [26, 'AA'],
  [701, 'ZZ'],
  [702, 'AAA'],
  [16_383, 'XFD'],
])('column %i from 0 is %s', (index, letter) => {
  expect(columnLetter(index)).toBe(letter);
});
