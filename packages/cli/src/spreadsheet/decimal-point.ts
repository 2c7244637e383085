import type { Separator } from './separator.js';

/** Three figures after a comma may be thousands: `1,200`. Not so after a leading zero: `0,011`. */
const THOUSANDS = /(?:^|\D)[1-9]\d{0,2},\d{3}(?!\d)/;

/**
 * A number as written with a decimal comma, with a point instead. Left alone, to be
 * refused, where the comma may part thousands and nothing else in the table says that
 * commas are decimal.
 */
export function decimalPoint(text: string, separator: Separator): string {
  if (separator !== ';' && THOUSANDS.test(text)) return text;
  return text.replaceAll(/(\d),(\d)/g, '$1.$2');
}
