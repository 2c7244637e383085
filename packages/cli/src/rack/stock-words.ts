import { printAsTyped, unitsAsTyped } from '../length/print-exact.js';
import { printThickness } from '../length/print-length.js';
import type { ShopUnits } from '../length/unit.js';
import type { RackMetal, RackSize } from './rack.js';

type Sides = Pick<RackSize, 'length' | 'width'>;

/** What headings say of units. */
export const UNIT_WORDS: Readonly<Record<ShopUnits, string>> = { in: 'inches', mm: 'mm' };

/** `17 1/2 x 6`, without the unit, for tables that name it in the heading; `300 x 90 mm` where it is another. */
export function bareSize(size: Sides, units: ShopUnits): string {
  const words = sizeWords(size, units);
  return words.endsWith(` ${units}`) ? words.slice(0, -units.length - 1) : words;
}

/** `17 1/2 x 6 in` */
export function sizeWords({ length, width }: Sides, units: ShopUnits): string {
  const typed = unitsAsTyped([length, width], units);
  return `${printAsTyped(length, typed)} x ${printAsTyped(width, typed)} ${typed}`;
}

/** `tinplate, 0.011 in thick` */
export function metalWords({ metal, thickness }: RackMetal, units: ShopUnits): string {
  return thickness === undefined ? metal : `${metal}, ${printThickness(thickness, units)} thick`;
}

/** The same as a heading: `Tinplate, 0.011 in thick`, `Copper, thickness not known`. */
export function metalHeading(metal: RackMetal, units: ShopUnits): string {
  const words = metalWords(metal, units);
  const told = metal.thickness === undefined ? `${words}, thickness not known` : words;
  return `${told.charAt(0).toUpperCase()}${told.slice(1)}`;
}

/** The day of a time, as YYYY-MM-DD. */
export function dayOf(time: string): string {
  return time.slice(0, 'YYYY-MM-DD'.length);
}
