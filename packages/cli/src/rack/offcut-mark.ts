/**
 * The marks that are written on offcuts with a pen. Capital letters and figures
 * that are not taken for each other by hand: no O beside 0 or D, no I or L beside 1,
 * no 5 beside S, 2 beside Z, 8 beside B, 6 beside G, U beside V, Q or W. Upside down
 * only 9 would turn into another sign, 6, which is none of them.
 */
const SIGNS = 'ACDEFHJKMNPRTVXY3479';
const BASE = SIGNS.length;
/** The first number is written with two signs, so that a mark has three at least. */
const BEFORE_FIRST = BASE;

/**
 * The mark of a number, counted from 1: its digits in base 20
 * and a check sign, so that a mark that is misread in one place is no mark at all.
 * The check sign is that of the pure recursive hybrid system of ISO/IEC 7064 for an
 * alphabet of 20, modulus 21,20.
 */
export function markOf(number: number): string {
  const digits: number[] = [];
  for (let rest = number + BEFORE_FIRST; rest > 0; rest = Math.floor(rest / BASE)) {
    digits.unshift(rest % BASE);
  }
  return [...digits, checkDigit(digits)].map((digit) => SIGNS[digit]).join('');
}

/** The mark as it is kept, from how a person typed it; undefined where it is none. */
export function readOffcutMark(text: string): string | undefined {
  const mark = text.trim().toUpperCase();
  const digits = [...mark].map((sign) => SIGNS.indexOf(sign));
  if (digits.length < 3 || digits.includes(-1)) return undefined;
  return digits.at(-1) === checkDigit(digits.slice(0, -1)) ? mark : undefined;
}

/** ISO/IEC 7064, clause on hybrid systems: P starts at M; S = P + a mod M, 0 read as M; P = 2 S mod M + 1. */
function checkDigit(digits: readonly number[]): number {
  let product = BASE;
  for (const digit of digits) {
    const sum = (product + digit) % BASE || BASE;
    product = (sum * 2) % (BASE + 1);
  }
  return (BASE + 1 - product) % BASE;
}
