import { EXIT } from '../../exit-code.js';
import { historyLines } from '../../rack/history-lines.js';
import { stockEntry } from '../../rack/stock-entry.js';
import { type Command, flagOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { MARK_SUBJECT, markedStock } from './marked-stock.js';
import { RACK_OPTION, withRack } from './open-rack.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

/** `stripwright rack history`: all that happened to one mark. */
export const history: Command = {
  name: 'history',
  subject: MARK_SUBJECT,
  summary: 'print all that happened to a thing on the rack, also after it is gone',
  options: {
    ...UNITS_OPTION,
    json: flagOption('print it as JSON, in millimetres'),
    ...RACK_OPTION,
  },
  examples: [{ command: 'stripwright rack history CCY', meaning: 'what happened to CCY' }],
  async run(given, environment) {
    const options = new OptionReader(given);
    const units = readUnits(options);
    options.raiseFaults();
    const { stock, events, jobs } = await withRack(given, environment, (rack) => {
      const marked = markedStock(given.subject, rack);
      return { stock: marked, events: rack.history(marked.mark), jobs: rack.jobs() };
    });
    const text = given.flag('json')
      ? JSON.stringify({ ...stockEntry(stock), events }, null, 2)
      : historyLines(stock, events, jobs, units).join('\n');
    environment.stdout.write(`${text}\n`);
    return EXIT.done;
  },
};
