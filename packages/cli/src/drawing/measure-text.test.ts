import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ASCENT, DESCENT, LINE_HEIGHT, oneLine, shorten, textWidth, wrap } from './measure-text.js';
import { measureTexts } from './read-svg.test.support.js';

const openSans = (text: string) => {
  const attributes = { x: '0', y: '0', 'font-size': '1' };
  const [box] = measureTexts([{ name: 'text', attributes, text }]);
  return box ?? { x: NaN, y: NaN, width: NaN, height: NaN };
};

describe('measuring text', () => {
  it('is no narrower than Open Sans as svgdom measures it', () => {
    for (let code = 0x21; code < 0x250; code += 1) {
      const character = String.fromCodePoint(code);
      if (/\p{Cc}|\p{Z}|\p{Cf}/u.test(character)) continue;
      expect(textWidth(character), character).toBeGreaterThanOrEqual(openSans(character).width);
    }
    const { y, height } = openSans('Åg');
    expect(ASCENT).toBeGreaterThanOrEqual(-y);
    expect(DESCENT).toBeGreaterThanOrEqual(y + height);
    expect(LINE_HEIGHT).toBeGreaterThanOrEqual(height);
  });

  it('is no narrower than DejaVu Sans, one of the widest common faces', () => {
    // Advance widths of 2048 in the font's own hmtx table, version 2.37.
    const plain = { '0': 1303, W: 2025, m: 1995, i: 569, '/': 690, '×': 1716, e: 1260, ' ': 651 };
    for (const [character, advance] of Object.entries(plain)) {
      expect(textWidth(character), character).toBeGreaterThanOrEqual(advance / 2048);
    }
    // The bold face.
    expect(textWidth('0', true)).toBeGreaterThanOrEqual(1425 / 2048);
  });

  it('shortens to the room, keeps whole letters, and leaves what fits alone', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme' }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (text, room) => {
          const short = shorten(text, room);
          expect(textWidth(short)).toBeLessThanOrEqual(room);
          if (textWidth(text) <= room) expect(short).toBe(text);
          if (short !== text && short !== '') {
            expect(short.endsWith('…')).toBe(true);
            expect(text.startsWith(short.slice(0, -1))).toBe(true);
          }
        },
      ),
    );
    const family = '👩‍👩‍👧‍👦';
    expect(shorten(`${family}${family}`, textWidth(`${family}…`))).toBe(`${family}…`);
  });

  it('wraps between words without losing one', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,9}$/u), { minLength: 1 }), (words) => {
        const lines = wrap(words.join(' '), 12);
        expect(lines.join(' ')).toBe(words.join(' '));
        for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(12);
      }),
    );
  });
});

describe('a name on one line', () => {
  it('has no character that XML 1.0 forbids, nor one that turns the reading order', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        // XML 1.0, production [2] Char; whitespace other than the space is gone too.
        expect(oneLine(text)).toMatch(/^[\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]*$/u);
        expect(oneLine(text)).not.toMatch(/[\u202A-\u202E\u2066-\u2069]/u);
      }),
    );
    expect(oneLine('  a\n\tb\u0000 \ud800\u202ec ')).toBe('a b \uFFFDc');
  });

  it('keeps at most two accents on a letter', () => {
    expect(oneLine(`e${'\u0301'.repeat(9)}`)).toBe('e\u0301\u0301');
  });
});
