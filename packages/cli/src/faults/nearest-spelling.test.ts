import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editDistance, foldSpelling, nearestSpelling } from './nearest-spelling.js';

describe('edit distance', () => {
  // kitten to sitting takes 3 changes: the usual textbook example of Levenshtein's distance.
  test.each([
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
    ['abc', '', 3],
    ['heart', 'heart', 0],
    ['haert', 'heart', 1],
    ['hert', 'heart', 1],
  ])('%s to %s is %d', (from, to, distance) => {
    expect(editDistance(from, to)).toBe(distance);
  });

  test('is symmetric, and 0 only for equal words', () => {
    const word = fc.string({ maxLength: 8 });
    fc.assert(
      fc.property(word, word, (one, other) => {
        expect(editDistance(one, other)).toBe(editDistance(other, one));
        expect(editDistance(one, other) === 0).toBe(one === other);
      }),
    );
  });
});

describe('the nearest spelling', () => {
  const known = ['heart', 'regular polygon', 'crescent', 'circle'];

  test.each([
    ['hart', 'heart'],
    ['Regular-Polygon', 'regular polygon'],
    ['regular poligon', 'regular polygon'],
    ['cresent', 'crescent'],
    ['regular', 'regular polygon'],
    ['cr', undefined],
    ['c', undefined],
    ['ladder', undefined],
  ])('of %s is %s', (word, nearest) => {
    expect(nearestSpelling(word, known)).toBe(nearest);
  });

  test('blanks, hyphens and case do not matter', () => {
    expect(foldSpelling(' Across-FLATS ')).toBe(foldSpelling('across  flats'));
  });
});
