import { type Command, flagOption, textOption } from '../command.js';
import type { Delivery } from './delivery.js';
import { RACK_OPTION } from './open-rack.js';
import { receivePlanned } from './receive-plan.js';
import { receiveSheets } from './receive-sheets.js';
import { STOCK_OPTIONS } from './stock-options.js';
import { UNITS_OPTION } from './units-option.js';

/** In the order in which they are asked whether they take the subject. */
const deliveries: readonly Delivery[] = [receivePlanned, receiveSheets];

/** `stripwright rack receive`: whole sheets that were bought. */
export const receive: Command = {
  name: 'receive',
  subject: {
    name: deliveries.map(({ subject }) => subject).join('-or-'),
    meaning: deliveries.map(({ meaning }) => meaning).join(', or '),
  },
  summary: 'put whole sheets that were bought on the rack',
  options: {
    count: textOption('how many'),
    name: textOption('what the shop calls them'),
    ...STOCK_OPTIONS,
    ...UNITS_OPTION,
    json: flagOption('print what lies there then as JSON, in millimetres'),
    ...RACK_OPTION,
  },
  examples: deliveries.flatMap(({ examples }) => examples),
  async run(given, environment) {
    const delivery = deliveries.find(({ takes }) => takes(given.subject)) ?? receiveSheets;
    return delivery.receive(given, environment);
  },
};
