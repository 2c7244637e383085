import { printAsTyped } from '../length/print-exact.js';
import type { Rule } from '../length/print-length.js';
import type { RackSize } from './rack.js';

/** What sheets are called that nobody gave a name: `Tinplate 28 x 20 in`. */
export function usualSheetName({ metal, length, width }: RackSize, rule: Rule): string {
  const sides = [length, width].map((side) => printAsTyped(side, rule)).join(' x ');
  return `${metal.charAt(0).toUpperCase()}${metal.slice(1)} ${sides} ${rule.units}`;
}
