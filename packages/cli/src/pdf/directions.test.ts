import { describe, expect, it } from 'vitest';
import { directionsOf } from './directions.js';

const told = (line: string) =>
  directionsOf(line).map(({ text, rightToLeft }) => `${rightToLeft ? '<' : '>'}${text}`);

// By the rules of Unicode Standard Annex 9, worked by hand; levels are those of a line that as a
// whole reads from left to right.
describe('the directions of a line', () => {
  it('are one for plain text', () => {
    expect(told('Heart 12')).toEqual(['>Heart 12']);
    expect(told('')).toEqual([]);
  });

  it('turn round for Hebrew, and back for numbers within it', () => {
    expect(told('a אב 12 גד b')).toEqual(['>a ', '< גד', '>12', '<אב ', '> b']);
  });

  it('mirror brackets that read from right to left', () => {
    expect(told('א(ב)ג')).toEqual(['<א)ב(ג']);
  });
});
