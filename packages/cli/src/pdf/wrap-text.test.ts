import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrapText } from './wrap-text.js';

/** As a typewriter has it: every letter is one wide. */
const widthOf = (line: string) => [...new Intl.Segmenter('en').segment(line)].length;

describe('wrapping', () => {
  it('breaks between words, and within a word that is too long', () => {
    expect(wrapText('cut the strip', 8, widthOf)).toEqual(['cut the', 'strip']);
    expect(wrapText('a stretched word', 5, widthOf)).toEqual(['a', 'stret', 'ched', 'word']);
  });

  it('keeps every letter, in lines no wider than asked for', () => {
    const texts = fc.string({ unit: 'grapheme', maxLength: 80 });
    fc.assert(
      fc.property(texts, fc.integer({ min: 1, max: 30 }), (text, width) => {
        const lines = wrapText(text, width, widthOf);
        for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(width);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
      }),
    );
  });
});
