import { EXIT } from '../../exit-code.js';
import { foldSpelling } from '../../faults/nearest-spelling.js';
import { accept, type Reading } from '../../faults/reading.js';
import type { ShopUnits } from '../../length/unit.js';
import { parsePrice } from '../../money.js';
import { MOST, readChoice, readCount, readText } from '../../order/fields.js';
import { ROLLED } from '../../order/stock-schema.js';
import { listTables } from '../../rack/list-table.js';
import type { Correction, RackStock } from '../../rack/rack.js';
import { readRackText } from '../../rack/rack-text.js';
import { readStockSize } from '../../rack/read-stock-size.js';
import { stockEntry } from '../../rack/stock-entry.js';
import { type Command, flagOption, type Given, textOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { MARK_SUBJECT, markedStock } from './marked-stock.js';
import { RACK_OPTION, withRack } from './open-rack.js';
import { readMetal, STOCK_OPTIONS, stockThicknessText } from './stock-options.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

const UNKNOWN = 'unknown';
const NONE = 'none';

const FIELDS = {
  size: textOption('its two sides, such as "17 1/2 x 6 in"'),
  ...STOCK_OPTIONS,
  metal: textOption('what it is of'),
  thickness: textOption(`a length, or as sold: 100lb, 28ga, 16oz; or ${UNKNOWN}`),
  rolled: textOption(`seen along its longer side: along, across or ${UNKNOWN}`),
  value: textOption(`what it stands for in the books, each; or ${NONE}`),
  name: textOption('what the shop calls whole sheets'),
  count: textOption('how many, of whole sheets that were counted again'),
};

/** `stripwright rack correct`: what the rack says of a thing is put right. */
export const correct: Command = {
  name: 'correct',
  subject: MARK_SUBJECT,
  summary: 'put right what the rack says of a thing',
  options: {
    ...FIELDS,
    ...UNITS_OPTION,
    json: flagOption('print it as JSON, in millimetres'),
    ...RACK_OPTION,
  },
  examples: [
    {
      command: 'stripwright rack correct CCY --size "17 1/4 x 6 in" --place "door"',
      meaning: 'another size and place',
    },
    {
      command: 'stripwright rack correct CDV --rolled along --value none',
      meaning: 'how it was rolled; its worth goes by the rule for keeping',
    },
  ],
  async run(given, environment) {
    const options = new OptionReader(given);
    const units = readUnits(options);
    options.raiseFaults();
    const stock = await withRack(given, environment, (rack) => {
      const before = markedStock(given.subject, rack);
      const correction = readCorrection(given, before, units, options);
      options.raiseFaults();
      return rack.correct(before.mark, correction);
    });
    const text = given.flag('json')
      ? JSON.stringify(stockEntry(stock), null, 2)
      : listTables([stock], units).slice(0, -2).join('\n');
    environment.stdout.write(`${text}\n`);
    return EXIT.done;
  },
};

function readCorrection(
  given: Given,
  { mark, kind, metal: now }: RackStock,
  units: ShopUnits,
  options: OptionReader,
): Correction {
  const size = options.optional('size', (text) => readStockSize(text, units));
  const metal = readMetal(options);
  const thickness = options.optional('thickness', (text) =>
    orNothing<number>(text, UNKNOWN, (written) => stockThicknessText(written, metal ?? now, units)),
  );
  const rolled = options.optional('rolled', (text) =>
    orNothing(text, UNKNOWN, (written) => readChoice(written, ROLLED)),
  );
  const place = options.optional('place', readRackText);
  const origin = options.optional('from', readRackText);
  const bookValue = options.optional('value', (text) => orNothing(text, NONE, parsePrice));
  const name = options.optional('name', readText);
  const count = options.optional('count', (text) => readCount(text, 0, MOST));
  if (kind === 'offcut') {
    for (const key of ['name', 'count']) {
      const found = given.text(key);
      if (found === undefined) continue;
      const complaint = {
        code: 'disagrees',
        expected: `left out, as ${mark} is an offcut`,
      } as const;
      options.complain(key, complaint, found);
    }
  }
  const names = Object.keys(FIELDS);
  if (names.every((key) => given.text(key) === undefined)) {
    const known = names.map((key) => `--${key}`);
    options.refuseSubject(mark, { code: 'nothing to correct', known });
  }
  return {
    ...(size ?? {}),
    ...(metal === undefined ? {} : { metal }),
    ...(thickness === undefined ? {} : { thickness }),
    ...(rolled === undefined ? {} : { rolled }),
    ...(place === undefined ? {} : { place }),
    ...(origin === undefined ? {} : { origin }),
    ...(bookValue === undefined ? {} : { bookValue }),
    ...(name === undefined ? {} : { name }),
    ...(count === undefined ? {} : { count }),
  };
}

/** A value, or null for the word that stands for none. */
function orNothing<T>(
  text: string,
  nothing: string,
  read: (text: string) => Reading<T>,
): Reading<T | null> {
  return foldSpelling(text) === nothing ? accept(null) : read(text);
}
