import { EXIT } from '../../exit-code.js';
import { writeRackCsv } from '../../rack/csv/write-csv.js';
import { listTables } from '../../rack/list-table.js';
import { stockEntry } from '../../rack/stock-entry.js';
import { HANDLING_CAUTION } from '../../report/cautions.js';
import { type Command, flagOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { FILTER_OPTIONS, readFilter } from './filter-options.js';
import { RACK_OPTION, withRack } from './open-rack.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

/** `stripwright rack list`: what lies there. */
export const list: Command = {
  name: 'list',
  summary: 'list what lies on the rack',
  options: {
    ...FILTER_OPTIONS,
    gone: flagOption('those that are gone as well'),
    ...UNITS_OPTION,
    csv: flagOption('print it as a table for a spreadsheet'),
    json: flagOption('print it as JSON, in millimetres'),
    ...RACK_OPTION,
  },
  examples: [
    { command: 'stripwright rack list', meaning: 'all that lies there' },
    {
      command: 'stripwright rack list --metal tinplate --at-least "10 x 4 in" --free',
      meaning: 'tinplate for a strip of 10 x 4 in',
    },
  ],
  async run(given, environment) {
    const options = new OptionReader(given);
    const units = readUnits(options);
    const filter = readFilter(options, units, given.flag('free'));
    if (given.flag('csv') && given.flag('json')) {
      options.complain('csv', { code: 'two formats', other: '--json' });
    }
    options.raiseFaults();
    const stock = await withRack(given, environment, (rack) =>
      rack.list(given.flag('gone') ? { ...filter, gone: true } : filter),
    );
    const { stdout } = environment;
    if (given.flag('json')) {
      stdout.write(`${JSON.stringify(stock.map(stockEntry), null, 2)}\n`);
    } else if (given.flag('csv')) {
      stdout.write(writeRackCsv(stock, { units: units, semicolons: false }));
    } else {
      const caution = stock.length === 0 ? [] : ['', HANDLING_CAUTION];
      stdout.write(`${[...listTables(stock, units), ...caution].join('\n')}\n`);
    }
    return EXIT.done;
  },
};
