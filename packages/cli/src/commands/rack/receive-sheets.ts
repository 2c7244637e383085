import { MOST, readCount, readText } from '../../order/fields.js';
import type { NewStock, RackStock } from '../../rack/rack.js';
import { readStockSize } from '../../rack/read-stock-size.js';
import { usualSheetName } from '../../rack/sheet-name.js';
import { wrap } from '../../report/table.js';
import { OptionReader } from '../option-reader.js';
import type { Delivery } from './delivery.js';
import { putOnRack } from './put-on-rack.js';
import { readTold } from './stock-options.js';
import { readUnits } from './units-option.js';

/** Whole sheets of one size. */
export const receiveSheets: Delivery = {
  subject: 'size',
  meaning: 'the size of the sheets, such as "28 x 20 in"',
  examples: [
    {
      command:
        'stripwright rack receive "28 x 20 in" --count 10 --name "Tinplate 20 x 28" --thickness 100lb --value 6.10',
      meaning: 'ten sheets that were bought',
    },
  ],
  takes: () => true,
  async receive(given, environment) {
    const options = new OptionReader(given);
    const units = readUnits(options);
    const size = options.subject('size', (text) => readStockSize(text, units));
    const told = readTold(options, units);
    const count = options.required('count', (text) => readCount(text, 1, MOST), 'how many');
    const name = options.optional('name', readText);
    options.raiseFaults();
    // Had they not been read, that would have been a fault.
    if (size === undefined || count === undefined) throw new Error('Options were not read.');
    const sheets: NewStock = {
      kind: 'sheets',
      name: name ?? usualSheetName({ ...size, ...told }, units),
      ...size,
      ...told,
      count,
    };
    return putOnRack([sheets], given, environment, {
      units,
      remarks: (put) => put.flatMap((pile) => remark(pile, count)),
    });
  },
};

function remark(pile: RackStock, count: number): readonly string[] {
  if (pile.count === count) return [`${pile.count} of ${pile.name} lie there.`];
  return wrap(
    `${pile.count} of ${pile.name} lie there, with those that were there before: their name, ` +
      `place and worth hold for all. To change them: stripwright rack correct ${pile.mark}`,
  );
}
