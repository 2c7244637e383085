import { join, resolve } from 'node:path';
import { EXIT } from '../exit-code.js';
import { accept, type Reading, refuse } from '../faults/reading.js';
import { gallery as drawGallery, PAGE_NAME } from '../gallery/gallery.js';
import { checkGalleryFolder } from '../gallery/gallery-folder.js';
import { SHOP_UNITS } from '../length/unit.js';
import { readChoice } from '../order/fields.js';
import { USUAL_MARK } from '../order/read-mark.js';
import { writePacket } from '../packet/packet-folder.js';
import { wrap } from '../report/table.js';
import { type Command, textOption } from './command.js';
import { OptionReader } from './option-reader.js';

const FOLDER = 'the name of a folder';

/** `stripwright gallery`: every outline with its strip, as pictures. */
export const gallery: Command = {
  name: 'gallery',
  summary: 'draw every outline with its strip, bends numbered',
  options: {
    out: textOption('write the pictures and a page that shows them into this folder'),
    units: textOption('units of the figures: mm (the default) or in'),
  },
  examples: [
    {
      command: 'stripwright gallery --out gallery',
      meaning: 'pictures of all outlines in gallery/',
    },
  ],
  async run(given, { stdout, files, cwd }) {
    const options = new OptionReader(given);
    const shown = options.required('out', readFolder, FOLDER);
    const units = options.optional('units', (text) => readChoice(text, SHOP_UNITS)) ?? 'mm';
    options.raiseFaults();
    // Had it been missing, that would have been a fault.
    if (shown === undefined) throw new Error('Options were not read.');
    const folder = resolve(cwd, shown);
    const drawn = drawGallery({ units, mark: USUAL_MARK[units] });
    const names = drawn.map(({ name }) => name);
    await checkGalleryFolder(folder, shown, names, files);
    await writePacket(folder, shown, drawn, files);
    const written =
      `Written to ${join(shown, '/')}: ${PAGE_NAME}, to open in a browser, and ` +
      `${drawn.length - 1} pictures, one of each outline.`;
    stdout.write(`${wrap(written, '  ').join('\n')}\n`);
    return EXIT.done;
  },
};

function readFolder(text: string): Reading<string> {
  return text === '' ? refuse({ code: 'missing', hint: FOLDER }) : accept(text);
}
