const LETTERS = 26;

/** What a spreadsheet calls a column, counted from 0: A to Z, then AA, AB and so on. */
export function columnLetter(index: number): string {
  const before = Math.floor(index / LETTERS);
  const letter = String.fromCharCode(65 + (index % LETTERS));
  return before === 0 ? letter : `${columnLetter(before - 1)}${letter}`;
}
