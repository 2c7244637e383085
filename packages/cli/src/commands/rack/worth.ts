import { EXIT } from '../../exit-code.js';
import { worthEntry, worthLines } from '../../rack/worth-report.js';
import { type Command, flagOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { RACK_OPTION, withRack } from './open-rack.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

/** `stripwright rack worth`: how much lies there. */
export const worth: Command = {
  name: 'worth',
  summary: 'print how much lies there, what it is worth, and how much became scrap',
  options: {
    ...UNITS_OPTION,
    json: flagOption('print it as JSON, in square millimetres and grams'),
    ...RACK_OPTION,
  },
  examples: [{ command: 'stripwright rack worth', meaning: 'the sums over the rack' }],
  async run(given, environment) {
    const options = new OptionReader(given);
    const units = readUnits(options);
    options.raiseFaults();
    const sums = await withRack(given, environment, (rack) => rack.worth());
    const text = given.flag('json')
      ? JSON.stringify(worthEntry(sums), null, 2)
      : worthLines(sums, units).join('\n');
    environment.stdout.write(`${text}\n`);
    return EXIT.done;
  },
};
