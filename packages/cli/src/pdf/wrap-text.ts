/**
 * Breaks a text between words into lines that are at most so wide; a word that is wider by
 * itself is broken between letters.
 *
 * @param widthOf measures a line
 */
export function wrapText(
  text: string,
  width: number,
  widthOf: (line: string) => number,
): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((each) => pieces(each, width, widthOf))) {
    const longer = line === '' ? word.text : `${line}${word.glued ? '' : ' '}${word.text}`;
    if (line !== '' && widthOf(longer) > width) {
      lines.push(line);
      line = word.text;
    } else {
      line = longer;
    }
  }
  return [...lines, line];
}

interface Piece {
  readonly text: string;
  /** True where it goes on with the word of the piece before it. */
  readonly glued: boolean;
}

function pieces(word: string, width: number, widthOf: (line: string) => number): readonly Piece[] {
  if (widthOf(word) <= width) return [{ text: word, glued: false }];
  const found: Piece[] = [];
  let piece = '';
  for (const { segment } of new Intl.Segmenter('en').segment(word)) {
    if (piece !== '' && widthOf(piece + segment) > width) {
      found.push({ text: piece, glued: found.length > 0 });
      piece = '';
    }
    piece += segment;
  }
  return [...found, { text: piece, glued: found.length > 0 }];
}
