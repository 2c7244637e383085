import type { ShopUnits } from '../length/unit.js';
import type { RackSize } from './rack.js';
import { sizeWords } from './stock-words.js';

/** What sheets are called that nobody gave a name: `Tinplate 28 x 20 in`. */
export function usualSheetName(size: RackSize, units: ShopUnits): string {
  const { metal } = size;
  return `${metal.charAt(0).toUpperCase()}${metal.slice(1)} ${sizeWords(size, units)}`;
}
