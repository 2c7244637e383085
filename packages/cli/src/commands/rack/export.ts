import { resolve } from 'node:path';
import { EXIT } from '../../exit-code.js';
import { isRackTable } from '../../rack/csv/is-rack-table.js';
import { writeRackCsv } from '../../rack/csv/write-csv.js';
import { counted } from '../../report/counted.js';
import { BYTE_ORDER_MARK } from '../../spreadsheet/byte-order-mark.js';
import { writeWhole } from '../../whole-file.js';
import { type Command, flagOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { RACK_OPTION, withRack } from './open-rack.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

/** `stripwright rack export`: the rack for a spreadsheet. */
export const exportRack: Command = {
  name: 'export',
  subject: {
    name: 'file',
    meaning: 'the table to write; without it, the table is printed',
    optional: true,
  },
  summary: 'write the rack as a table (CSV) that a spreadsheet opens',
  options: {
    ...UNITS_OPTION,
    semicolons: flagOption('for spreadsheets that write decimals with a comma'),
    ...RACK_OPTION,
  },
  examples: [
    { command: 'stripwright rack export rack.csv', meaning: 'a table to look at and to edit' },
  ],
  async run(given, environment) {
    const { stdout, files, cwd } = environment;
    const options = new OptionReader(given);
    const units = readUnits(options);
    options.raiseFaults();
    const stock = await withRack(given, environment, (rack) => rack.list());
    const csv = writeRackCsv(stock, { units, semicolons: given.flag('semicolons') });
    const shown = given.subject;
    if (shown === '') {
      stdout.write(csv);
      return EXIT.done;
    }
    const text = `${BYTE_ORDER_MARK}${csv}`;
    const kind = 'a table of a rack';
    await writeWhole({ path: resolve(cwd, shown), shown, text, kind, isOurs: isRackTable }, files);
    stdout.write(`Written to ${shown}: ${counted(stock.length, 'line')} and the headings.\n`);
    return EXIT.done;
  },
};
