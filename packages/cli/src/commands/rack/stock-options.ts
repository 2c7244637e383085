import { choiceText } from '../../faults/fault-text.js';
import type { Reading } from '../../faults/reading.js';
import type { ShopUnits } from '../../length/unit.js';
import { parsePrice } from '../../money.js';
import { readChoice } from '../../order/fields.js';
import { ROLLED } from '../../order/stock-schema.js';
import { METAL_NAMES, metalSpelt, readThickness, USUAL_METAL } from '../../order/thickness.js';
import type { NewStock } from '../../rack/rack.js';
import { readRackText } from '../../rack/rack-text.js';
import { stockThickness } from '../../rack/read-stock-size.js';
import { textOption } from '../command.js';
import type { OptionReader } from '../option-reader.js';
import { optionKey } from '../size-options.js';

const METAL_KEYS = METAL_NAMES.map(optionKey);

/** What can be told of a thing on the rack besides its size. */
export const STOCK_OPTIONS = {
  metal: textOption(`${choiceText(METAL_KEYS)} (usually ${USUAL_METAL})`),
  thickness: textOption('a length, or as sold: 100lb, 28ga, 16oz'),
  rolled: textOption('how it was rolled, seen along its longer side: along or across'),
  place: textOption('where it lies'),
  from: textOption('where it came from'),
  value: textOption('what it stands for in the books, each'),
};

/** What was told of a thing to be put on the rack. What cannot be read is left out, and a fault. */
export function readTold(
  options: OptionReader,
  units: ShopUnits,
): Omit<NewStock, 'kind' | 'name' | 'length' | 'width' | 'count'> {
  const metal = readMetal(options) ?? USUAL_METAL;
  const thickness = readStockThickness(options, metal, units);
  const rolled = options.optional('rolled', (text) => readChoice(text, ROLLED));
  const bookValue = options.optional('value', parsePrice);
  return {
    metal,
    ...(thickness === undefined ? {} : { thickness }),
    ...(rolled === undefined ? {} : { rolled }),
    place: options.optional('place', readRackText) ?? '',
    origin: options.optional('from', readRackText) ?? '',
    ...(bookValue === undefined ? {} : { bookValue }),
  };
}

export function readMetal(options: OptionReader): string | undefined {
  return options.optional('metal', (text) => readChoice(text, METAL_NAMES));
}

/** @param metal what it is of, by which gauges are read */
export function readStockThickness(
  options: OptionReader,
  metal: string,
  units: ShopUnits,
): number | undefined {
  return options.optional('thickness', (text) => stockThicknessText(text, metal, units));
}

/** A thickness as a rack keeps it. */
export function stockThicknessText(text: string, metal: string, units: ShopUnits): Reading<number> {
  const read = readThickness(text, metalSpelt(metal), units);
  return read.ok ? stockThickness(read.value) : read;
}
