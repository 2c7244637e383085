import { BendError, families, StripError } from '@stripwright/strip-geometry';
import { CommandError, EXIT } from '../exit-code.js';
import type { CutterItem } from '../order/order.js';
import { type Blank, faultyField, sizeBlank } from '../order/strips.js';
import { blankEntry } from '../plan-file/to-plan-file.js';
import { stripReport } from '../report/strip-report.js';
import { wrap } from '../report/table.js';
import { type BlankRequest, readBlankRequest } from './blank-request.js';
import { type Command, flagOption, textOption } from './command.js';
import { MAKING_OPTIONS } from './making-options.js';
import { METAL_OPTIONS } from './metal-options.js';
import { optionName, sizeOptions } from './size-options.js';

/** `stripwright blank`: the flat strip of one cutter. */
export const blank: Command = {
  name: 'blank',
  subject: { name: 'outline', meaning: 'the kind of outline, from the list below' },
  summary: 'print the strip of one cutter and where to bend it',
  options: {
    ...sizeOptions(families),
    depth: textOption('height of the finished cutter'),
    units: textOption('units of bare numbers and of the output: in (the default) or mm'),
    mark: textOption('finest line on the rule (usually 1/32 in or 0.5 mm)'),
    ...MAKING_OPTIONS,
    ...METAL_OPTIONS,
    json: flagOption('print the strip as JSON, in millimetres'),
  },
  examples: [
    {
      command:
        'stripwright blank regular-polygon --sides 10 --side "1 5/8" --tab 3/4 --hem 0 --depth 1',
      meaning: 'a cutter of ten equal sides',
    },
    {
      command: 'stripwright blank heart --across 100mm --depth 25mm --units mm',
      meaning: 'a heart, in millimetres',
    },
  ],
  epilogue: [
    'Outlines and their sizes:',
    ...families.flatMap(({ name, summary, sizes }) => [
      ...wrap(`  ${name}: ${summary}`, '    '),
      ...wrap(
        `    ${sizes
          .map(({ name: size, required }) => {
            const option = optionName(size);
            return required ? option : `[${option}]`;
          })
          .join(' ')}`,
        '    ',
      ),
    ]),
    '',
    'Lengths: 1 5/8, 1-5/8, 5/8, 1.625, 1.625in, 41.3mm. Quote those with blanks in',
    'them: --side "1 5/8". Corners: --corners "0,0; 3,0; 3,2; 1 1/2,3 1/4; 0,2".',
  ],
  async run(given, { stdout }) {
    const { title, metal, item, shop } = readBlankRequest(given, families);
    const blank = blankEntry(sizedOrRefused(item, shop), shop);
    if (given.flag('json')) {
      stdout.write(`${JSON.stringify(blank, null, 2)}\n`);
    } else {
      stdout.write(`${stripReport({ title, metal, blank }, shop.rule).join('\n')}\n`);
    }
    return EXIT.done;
  },
};

function sizedOrRefused(item: CutterItem, shop: BlankRequest['shop']): Blank {
  try {
    return sizeBlank(item, 1, shop);
  } catch (error) {
    if (!(error instanceof StripError) && !(error instanceof BendError)) throw error;
    const field = faultyField(error, item);
    const option = field === undefined ? item.family : optionName(field);
    throw new CommandError(EXIT.badInput, `${option}: ${error.message}`);
  }
}
