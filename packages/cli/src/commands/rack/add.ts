import { readCount } from '../../order/fields.js';
import type { NewStock } from '../../rack/rack.js';
import { readStockSize } from '../../rack/read-stock-size.js';
import { type Command, flagOption, textOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { RACK_OPTION } from './open-rack.js';
import { putOnRack } from './put-on-rack.js';
import { readTold, STOCK_OPTIONS } from './stock-options.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

/** More alike are sheets rather than offcuts. */
const MOST_AT_ONCE = 1000;

/** `stripwright rack add`: an offcut, or several alike. */
export const add: Command = {
  name: 'add',
  subject: { name: 'size', meaning: 'its two sides, such as "17 1/2 x 6 in"' },
  summary: 'put an offcut on the rack, and print the mark to write on it',
  options: {
    ...STOCK_OPTIONS,
    count: textOption('how many alike, each with a mark of its own'),
    ...UNITS_OPTION,
    json: flagOption('print what was put there as JSON, in millimetres'),
    ...RACK_OPTION,
  },
  examples: [
    {
      command:
        'stripwright rack add "17 1/2 x 6 in" --thickness 100lb --rolled along --place "left rack" --from "spring order" --value 1.20',
      meaning: 'an offcut of tinplate, and all that is known of it',
    },
    {
      command: 'stripwright rack add "300 x 90 mm" --metal copper --count 2',
      meaning: 'two offcuts alike',
    },
  ],
  async run(given, environment) {
    const options = new OptionReader(given);
    const units = readUnits(options);
    const size = options.subject('size', (text) => readStockSize(text, units));
    const told = readTold(options, units);
    const count = options.optional('count', (text) => readCount(text, 1, MOST_AT_ONCE)) ?? 1;
    options.raiseFaults();
    // Had it not been read, that would have been a fault.
    if (size === undefined) throw new Error('Options were not read.');
    const offcut: NewStock = { kind: 'offcut', name: '', ...size, ...told, count: 1 };
    const stock = Array.from({ length: count }, () => offcut);
    return putOnRack(stock, given, environment, {
      units,
      remarks: () => [],
    });
  },
};
