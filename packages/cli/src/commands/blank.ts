import { BendError, families, StripError } from '@stripwright/strip-geometry';
import { CommandError, EXIT } from '../exit-code.js';
import type { CutterItem } from '../order/order.js';
import { type Blank, faultyField, sizeBlank } from '../order/strips.js';
import { blankEntry } from '../plan-file/to-plan-file.js';
import { stripCautions, stripReport } from '../report/strip-report.js';
import { wrap } from '../report/table.js';
import { type BlankRequest, readBlankRequest } from './blank-request.js';
import { type Command, flagOption, textOption } from './command.js';
import { MAKING_OPTIONS } from './making-options.js';
import { METAL_OPTIONS } from './metal-options.js';
import { SVG_OPTION } from './outline-options.js';
import { optionName, sizeOptions } from './size-options.js';

/** `stripwright blank`: the flat strip of one cutter. */
export const blank: Command = {
  name: 'blank',
  subject: { name: 'outline', meaning: 'the kind of outline, from the list below', optional: true },
  summary: 'print the strip of one cutter and where to bend it',
  options: {
    ...sizeOptions(families),
    ...SVG_OPTION,
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
    {
      command: 'stripwright blank --svg ring.svg --across 4in --depth 1in',
      meaning: 'the outlines of a drawing, made 4 in wide',
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
  async run(given, environment) {
    const { stdout } = environment;
    const request = await readBlankRequest(given, families, environment);
    const { cutters, metal, shop } = request;
    const blanks = cutters.map(({ title, item }) => ({
      title,
      blank: blankEntry(sizedOrRefused(item, shop), shop),
    }));
    if (given.flag('json')) {
      // A drawing may hold any number of outlines, so it always gives a list.
      const entries = blanks.map(({ blank }) => blank);
      const printed = given.text('svg') === undefined ? entries[0] : entries;
      stdout.write(`${JSON.stringify(printed, null, 2)}\n`);
    } else {
      const lines = blanks.flatMap(({ title, blank }) => [
        ...stripReport({ title, metal, blank }, shop.rule),
        '',
      ]);
      stdout.write(`${[...lines, ...stripCautions(metal.metal)].join('\n')}\n`);
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
    const option = field === undefined ? item.name : optionName(field);
    throw new CommandError(EXIT.badInput, `${option}: ${error.message}`);
  }
}
