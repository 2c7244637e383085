/**
 * How much room a text may take, in multiples of its font size.
 * The reader's sans-serif is unknown, so the widths are those of a wide one, rounded up;
 * what fits by them fits in every common face.
 */

/** From the baseline up to the top of the line, and down to its foot. */
export const ASCENT = 1.07;
export const DESCENT = 0.3;
export const LINE_HEIGHT = ASCENT + DESCENT;

/** Baseline below the middle of a line that is `LINE_HEIGHT` high. */
export const BASELINE_DROP = ASCENT - LINE_HEIGHT / 2;

const BOLD = 1.15;
/** An accented letter may be this much wider than its bare one. */
const ACCENT = 0.2;
const NARROW = /^[ijl.,:;'!·]$/u;
const BROAD = /^[mMwW%@&—…¼½¾©®]$/u;
const DIGIT = /^[0-9]$/u;
const CAPITAL = /^[A-Z]$/u;
const SIGN = /^[×+=<>~^#±÷]$/u;
const PLAIN = /^[\u0021-\u007E–‘’“”]$/u;
const OTHER_LATIN = /^[\u00A1-\u01C3]$/u;

/** Width of a text at font size 1. Multiply by the font size for millimetres. */
export function textWidth(text: string, bold = false): number {
  let width = 0;
  for (const character of text) width += advance(character);
  return bold ? width * BOLD : width;
}

/** Widths that were asked for before: maps measure the same few letters over and over. */
const ADVANCES = new Map<string, number>();

function advance(character: string): number {
  const known = ADVANCES.get(character);
  if (known !== undefined) return known;
  const width = newAdvance(character);
  ADVANCES.set(character, width);
  return width;
}

function newAdvance(character: string): number {
  if (character === ' ') return 0.33;
  const letter = character.normalize('NFD').charAt(0);
  return bareAdvance(letter) + (letter === character ? 0 : ACCENT);
}

function bareAdvance(letter: string): number {
  if (NARROW.test(letter)) return 0.42;
  if (BROAD.test(letter)) return 1.02;
  if (DIGIT.test(letter)) return 0.64;
  if (CAPITAL.test(letter)) return 0.8;
  if (SIGN.test(letter)) return 0.86;
  if (PLAIN.test(letter)) return 0.66;
  if (OTHER_LATIN.test(letter)) return 1.12;
  // Other scripts, symbols and emoji: most are an em or less, emoji a little more.
  return 1.4;
}

/**
 * Makes a name safe to draw on one line: no character XML forbids, no line breaks, no marks that
 * reverse the reading order of their neighbours, no towers of accents taller than a line, and
 * no musical notation, whose fonts stand as high as a stave.
 */
export function oneLine(text: string): string {
  return text
    .replace(/\p{Cs}|[\u{1D000}-\u{1D24F}]/gu, '\uFFFD')
    .replace(/[\p{Cc}\s]+/gu, ' ')
    .replace(/[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\uFFFE\uFFFF]/gu, '')
    .replace(/(\p{M}{2})\p{M}+/gu, '$1')
    .trim();
}

const LETTERS = new Intl.Segmenter('en');

/**
 * The text, or as much of its beginning as `room` (in multiples of the font size) holds, with an
 * ellipsis. Never splits an accented letter or an emoji. Empty if not even one letter fits.
 */
export function shorten(text: string, room: number, bold = false): string {
  if (textWidth(text, bold) <= room) return text;
  let kept = '';
  let width = textWidth('…', bold);
  for (const { segment } of LETTERS.segment(text)) {
    width += textWidth(segment, bold);
    if (width > room) break;
    kept += segment;
  }
  kept = kept.trimEnd();
  return kept === '' ? '' : `${kept}…`;
}

/** Breaks a text between words into lines of at most `room` (in multiples of the font size). */
export function wrap(text: string, room: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer) > room) {
      lines.push(line);
      line = word;
    } else {
      line = longer;
    }
  }
  lines.push(line);
  return lines.map((each) => shorten(each, room));
}
