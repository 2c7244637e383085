import { families, type Strip, type StripPart, splitStrip } from '@stripwright/strip-geometry';
import { EXIT } from '../exit-code.js';
import { cutterBlank, stripOf } from '../order/strips.js';
import type { PlanFileBlank } from '../plan-file/plan-file.js';
import { blankEntry } from '../plan-file/to-plan-file.js';
import { comparisonTable } from '../report/comparison-table.js';
import { emphasised } from '../report/emphasis.js';
import { stripCautions, stripReport } from '../report/strip-report.js';
import { wrap } from '../report/table.js';
import { type BlankRequest, type CutterRequest, readBlankRequest } from './blank-request.js';
import { type Command, flagOption, textOption } from './command.js';
import { MAKING_OPTIONS } from './making-options.js';
import { METAL_OPTIONS } from './metal-options.js';
import { SVG_OPTION } from './outline-options.js';
import { orRefused } from './refused-strip.js';
import { type Comparison, compareAllRules } from './rule-comparison.js';
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
    'fits-length': textOption('take the largest size whose strip comes out of this length'),
    longest: textOption('divide a strip that is longer, and print each part'),
    'compare-rules': flagOption('print how long the strip is by each bend rule'),
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
    {
      command: 'stripwright blank heart --fits-length 17in --depth 1in',
      meaning: 'the largest heart whose strip comes out of 17 in',
    },
    {
      command: 'stripwright blank circle --across 12in --depth 1in --longest 20in',
      meaning: 'a large circle, of parts that are joined',
    },
    {
      command:
        'stripwright blank house --across 4in --depth 1in --thickness 100lb --inside-radius 1/64 --compare-rules',
      meaning: 'a house, and its length by each bend rule',
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
    const { metal, shop } = request;
    const comparing = given.flag('compare-rules');
    const sized: SizedCutter[] = [];
    for (const cutter of request.cutters) {
      const { name, seam } = cutter.item;
      sized.push(
        await orRefused(name, seam, shop.rule.units, () => sizedCutter(cutter, request, comparing)),
      );
    }
    if (given.flag('json')) {
      const entries = sized.flatMap(({ parts, comparison }) =>
        parts.map(({ blank }) => (comparison === undefined ? blank : { ...blank, comparison })),
      );
      // A drawing may hold any number of outlines, and a strip be divided, so these give a list.
      const isList = given.text('svg') !== undefined || request.longest !== undefined;
      stdout.write(`${JSON.stringify(isList ? entries : entries[0], null, 2)}\n`);
    } else {
      const lines = sized.flatMap(({ parts, comparison }) => [
        ...parts.flatMap((part) => [...stripReport({ ...part, metal }, shop.rule), '']),
        ...(comparison === undefined ? [] : [...comparisonTable(comparison, shop.rule), '']),
      ]);
      const report = [...lines, ...stripCautions(metal.metal)];
      stdout.write(`${emphasised(report, stdout).join('\n')}\n`);
    }
    return EXIT.done;
  },
};

/** The strip of one outline, in parts where it is longer than asked for. */
interface SizedCutter {
  readonly parts: readonly { readonly title: string; readonly blank: PlanFileBlank }[];
  readonly comparison?: Comparison;
}

function sizedCutter(
  { title, item, outline }: CutterRequest,
  { shop, longest, metal }: BlankRequest,
  comparing: boolean,
): SizedCutter {
  const whole = stripOf(item, outline, shop);
  const strips =
    longest === undefined ? [whole] : splitStrip(whole, longest, item.handwork).map(stripOfPart);
  const of = strips.length;
  const parts = strips.map((strip, index) => {
    const cutter = { name: item.name, outline, strip };
    const part = { number: index + 1, of };
    const blank = cutterBlank(item, of === 1 ? cutter : { ...cutter, part }, shop);
    const partTitle = of === 1 ? title : `${title}, part ${part.number} of ${of}`;
    return { title: partTitle, blank: blankEntry(blank, shop) };
  });
  return comparing ? { parts, comparison: compareAllRules(item, outline, metal) } : { parts };
}

function stripOfPart({ strip }: StripPart): Strip {
  return strip;
}
