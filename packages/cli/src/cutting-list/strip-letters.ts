const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** A, B and so on to Z, then AA, AB; without I and O, which are read as 1 and 0. */
export function stripLetters(index: number): string {
  const letter = LETTERS[index % LETTERS.length] ?? '';
  const before = Math.floor(index / LETTERS.length);
  return before === 0 ? letter : stripLetters(before - 1) + letter;
}
