import { CommandError, EXIT } from '../../exit-code.js';
import type { ShopUnits } from '../../length/unit.js';
import { readRackCsv } from '../../rack/csv/read-csv.js';
import { marksTable } from '../../rack/marks-table.js';
import type { MergeLine, MergeResult, Rack } from '../../rack/rack.js';
import { RackError } from '../../rack/rack-error.js';
import { readInput } from '../../read-input.js';
import { wrap } from '../../report/table.js';
import { type Command, flagOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { RACK_OPTION, withRack } from './open-rack.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

/** `stripwright rack import`: what a spreadsheet changed. */
export const importRack: Command = {
  name: 'import',
  subject: { name: 'file', meaning: 'a table (CSV), such as rack export writes' },
  summary: 'take changes and new lines of a table into the rack, all or none',
  options: {
    ...UNITS_OPTION,
    json: flagOption('print the marks of what changed as JSON'),
    ...RACK_OPTION,
  },
  examples: [{ command: 'stripwright rack import rack.csv', meaning: 'take in what was edited' }],
  epilogue: [
    'The first line has the headings, in any order: mark, kind (offcut or sheets),',
    'name, length, width, metal, thickness, rolled, place, from, value and count. A',
    'line with a mark corrects what lies under it, one without puts something new on',
    'the rack; what is on no line stays. The columns since and promised are not read.',
  ],
  async run(given, environment) {
    const options = new OptionReader(given);
    const units = readUnits(options);
    options.raiseFaults();
    const text = await readInput(given.subject, environment);
    const told = await withRack(given, environment, (rack) => {
      const lines = readRackCsv(text, given.subject, units, {
        find: (mark) => rack.find(mark),
        marks: marksOf(rack),
      });
      const result = merged(rack, lines, given.subject);
      return given.flag('json') ? JSON.stringify(result, null, 2) : report(result, rack, units);
    });
    environment.stdout.write(`${told}\n`);
    return EXIT.done;
  },
};

/** All marks of a rack, which are looked up once at most. */
function marksOf(rack: Rack): () => readonly string[] {
  let marks: readonly string[] | undefined;
  return () => {
    marks ??= rack.list().map(({ mark }) => mark);
    return marks;
  };
}

function merged(rack: Rack, lines: readonly MergeLine[], file: string): MergeResult {
  try {
    return rack.merge(lines);
  } catch (error) {
    if (!(error instanceof RackError) || error.code !== 'bad value') throw error;
    const message = error.message.replaceAll(/^line (\d+): /gm, `${file}:$1: `);
    throw new CommandError(EXIT.badInput, message, { cause: error });
  }
}

function report(
  { added, corrected, unchanged }: MergeResult,
  rack: Rack,
  units: ShopUnits,
): string {
  const fresh = added.flatMap((mark) => rack.find(mark) ?? []);
  const lines = [
    ...(fresh.length === 0 ? [] : [...marksTable(fresh, units), '']),
    `Added: ${added.length}`,
    ...wrap(`Corrected: ${named(corrected)}`, '  '),
    `As they were: ${unchanged}`,
  ];
  return lines.join('\n');
}

function named(marks: readonly string[]): string {
  return marks.length === 0 ? '0' : `${marks.length} (${marks.join(', ')})`;
}
