/**
 * Tints and inks. No fact rests on colour alone: numbers, words, hatching and line style say it
 * too. All tints are pale enough to print near white, all inks dark enough to print near black.
 */
export const INK = {
  text: '#1b2126',
  paper: '#ffffff',
  soft: '#66707a',
  firstCut: '#14304d',
  laterCut: '#7a3e0c',
  hatch: '#8d979f',
  keepGround: '#f2f7f4',
  scrapGround: '#f0eeec',
} as const;

const TINTS = ['#e3edf6', '#f7edd6', '#e6f0e4', '#f4e4e0', '#e9e5f2', '#eeeeea'] as const;

/** A blank's tint, by its number, so that it has the same one on every map of a plan. */
export function tint(number: number): string {
  const turn = ((Math.trunc(number) % TINTS.length) + TINTS.length) % TINTS.length;
  return TINTS[turn] ?? TINTS[0];
}
