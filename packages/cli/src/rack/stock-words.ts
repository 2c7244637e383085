import { printAsTyped } from '../length/print-exact.js';
import { printThickness, type Rule } from '../length/print-length.js';
import type { RackMetal, RackSize } from './rack.js';

/** `17 1/2 x 6`, without the unit, for tables that name it in the heading. */
export function bareSize({ length, width }: Pick<RackSize, 'length' | 'width'>, rule: Rule) {
  return `${printAsTyped(length, rule)} x ${printAsTyped(width, rule)}`;
}

/** `17 1/2 x 6 in` */
export function sizeWords(size: Pick<RackSize, 'length' | 'width'>, rule: Rule): string {
  return `${bareSize(size, rule)} ${rule.units}`;
}

/** `tinplate, 0.011 in thick` */
export function metalWords({ metal, thickness }: RackMetal, { units }: Rule): string {
  return thickness === undefined ? metal : `${metal}, ${printThickness(thickness, units)} thick`;
}

/** The day of a time, as YYYY-MM-DD. */
export function dayOf(time: string): string {
  return time.slice(0, 'YYYY-MM-DD'.length);
}
