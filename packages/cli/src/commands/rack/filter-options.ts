import type { ShopUnits } from '../../length/unit.js';
import { readChoice } from '../../order/fields.js';
import { USUAL_METAL } from '../../order/thickness.js';
import type { RackFilter } from '../../rack/rack.js';
import { readStockSize } from '../../rack/read-stock-size.js';
import { flagOption, textOption } from '../command.js';
import type { OptionReader } from '../option-reader.js';
import { readMetal, readStockThickness } from './stock-options.js';

const KINDS = ['offcuts', 'sheets'] as const;

/** Which things on the rack are meant. */
export const FILTER_OPTIONS = {
  metal: textOption('those of this metal'),
  thickness: textOption('those of this thickness: a length, or as sold: 100lb, 28ga, 16oz'),
  'at-least': textOption('those that a rectangle of this size can be cut from, either way round'),
  kind: textOption('offcuts or sheets'),
  free: flagOption('those that are promised to no plan'),
};

export function readFilter(options: OptionReader, units: ShopUnits, free: boolean): RackFilter {
  const metal = readMetal(options);
  const thickness = readStockThickness(options, metal ?? USUAL_METAL, units);
  const least = options.optional('at-least', (text) => readStockSize(text, units));
  const kind = options.optional('kind', (text) => readChoice(text, KINDS));
  return {
    ...(metal === undefined ? {} : { metal }),
    ...(thickness === undefined ? {} : { thickness }),
    ...(least === undefined ? {} : { leastLength: least.length, leastWidth: least.width }),
    ...(kind === undefined ? {} : { kind: kind === 'offcuts' ? 'offcut' : 'sheets' }),
    ...(free ? { free } : {}),
  };
}
