import { resolve } from 'node:path';
import { CommandError, EXIT } from '../../exit-code.js';
import { isRackPage, rackPage } from '../../rack/page/rack-page.js';
import { counted } from '../../report/counted.js';
import { writeWhole } from '../../whole-file.js';
import type { Command } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { FILTER_OPTIONS, readFilter } from './filter-options.js';
import { RACK_OPTION, withRack } from './open-rack.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

/** More would make a page that no browser shows at ease. */
const MOST_OUTLINES = 2000;

/** `stripwright rack draw`: a page for the wall. */
export const draw: Command = {
  name: 'draw',
  subject: { name: 'page', meaning: 'the page to write, such as rack.html' },
  summary: 'draw a page to print, with the outline of each offcut to scale',
  options: { ...FILTER_OPTIONS, ...UNITS_OPTION, ...RACK_OPTION },
  examples: [
    { command: 'stripwright rack draw rack.html', meaning: 'all offcuts, for the wall' },
    {
      command: 'stripwright rack draw sheets.html --kind sheets',
      meaning: 'the whole sheets instead',
    },
  ],
  async run(given, environment) {
    const { stdout, files, cwd } = environment;
    const options = new OptionReader(given);
    const units = readUnits(options);
    const filter = { kind: 'offcut' as const, ...readFilter(options, units, given.flag('free')) };
    options.raiseFaults();
    const { stock, revision } = await withRack(given, environment, (rack) => ({
      stock: rack.list(filter),
      revision: rack.revision,
    }));
    if (stock.length > MOST_OUTLINES) {
      throw new CommandError(
        EXIT.badInput,
        `${stock.length} outlines are too many for a page, ${MOST_OUTLINES} at most; ` +
          'draw those of one metal, or large ones alone: --metal, --at-least',
      );
    }
    const shown = given.subject;
    const text = rackPage({ stock, units, revision });
    const page = { path: resolve(cwd, shown), shown, text, kind: 'a drawing of a rack' };
    await writeWhole({ ...page, isOurs: isRackPage }, files);
    stdout.write(
      `Written to ${shown}, to open in a browser and print: ${counted(stock.length, 'outline')}.\n`,
    );
    return EXIT.done;
  },
};
