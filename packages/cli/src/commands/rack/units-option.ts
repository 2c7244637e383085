import { SHOP_UNITS, type ShopUnits } from '../../length/unit.js';
import { readChoice } from '../../order/fields.js';
import { textOption } from '../command.js';
import type { OptionReader } from '../option-reader.js';

/** How lengths are read and printed. */
export const UNITS_OPTION = {
  units: textOption('units of bare numbers and of the output: in (the default) or mm'),
};

export function readUnits(options: OptionReader): ShopUnits {
  return options.optional('units', (text) => readChoice(text, SHOP_UNITS)) ?? 'in';
}
