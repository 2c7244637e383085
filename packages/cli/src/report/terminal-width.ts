import stringWidth from 'string-width';

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Hebrew, Arabic and their neighbours: the strong right-to-left ranges of Unicode. */
const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
const LEFT_TO_RIGHT_MARK = '\u200e';

/** How many columns of a terminal a text takes: two for most of East Asia and for emoji. */
export function columnsOf(text: string): number {
  // Nearly all texts, and what is counted again and again.
  return /^[\x20-\x7e]*$/.test(text) ? text.length : stringWidth(text);
}

/** The most of the beginning of a text that goes into so many columns, no sign cut apart. */
export function cutToColumns(text: string, columns: number): string {
  if (columnsOf(text) <= columns) return text;
  let cut = '';
  let used = 0;
  for (const { segment } of graphemes.segment(text)) {
    used += columnsOf(segment);
    if (used > columns) break;
    cut += segment;
  }
  return cut;
}

/** A text filled up with blanks to so many columns, on its right or on its left. */
export function padToColumns(text: string, columns: number, align: 'left' | 'right'): string {
  const blanks = ' '.repeat(Math.max(0, columns - columnsOf(text)));
  return align === 'right' ? `${blanks}${text}` : `${text}${blanks}`;
}

/**
 * A text that leaves alone what follows it on the line. Where it runs from right to left,
 * a terminal that heeds that would otherwise draw figures after it as a part of it
 * (Unicode Standard Annex 9, rule W2 and N1); the mark takes no room.
 */
export function keptApart(text: string): string {
  return RIGHT_TO_LEFT.test(text) ? `${text}${LEFT_TO_RIGHT_MARK}` : text;
}
