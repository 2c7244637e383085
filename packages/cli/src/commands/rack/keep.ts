import { EXIT } from '../../exit-code.js';
import type { ShopUnits } from '../../length/unit.js';
import { parsePrice } from '../../money.js';
import { USUAL_METAL } from '../../order/thickness.js';
import { keepEntry, keepTable, worthOfSquareMetre } from '../../rack/keep-table.js';
import type { ShopKeepRule } from '../../rack/rack.js';
import { readStockSize } from '../../rack/read-stock-size.js';
import { type Command, flagOption, type Given, textOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { RACK_OPTION, withRack } from './open-rack.js';
import { readMetal, readStockThickness, STOCK_OPTIONS } from './stock-options.js';
import { readUnits, UNITS_OPTION } from './units-option.js';

const LEAST = 'the least offcut that is kept, a size, either way round';
/** What a rule says; the other options say which rule. */
const SETTING = ['least', 'worth', 'trouble', 'metal', 'thickness'];

/** `stripwright rack keep`: which offcuts are worth keeping. */
export const keep: Command = {
  name: 'keep',
  summary: 'print or set the rule for which offcuts are worth keeping',
  options: {
    least: textOption(LEAST),
    worth: textOption('what a square foot is worth, or a square metre with --units mm'),
    trouble: textOption('what the keeping of each costs in trouble, taken off its worth'),
    metal: STOCK_OPTIONS.metal,
    thickness: textOption('of this thickness alone: a length, or as sold: 100lb, 28ga, 16oz'),
    ...UNITS_OPTION,
    json: flagOption('print the rules as JSON, in millimetres and square metres'),
    ...RACK_OPTION,
  },
  examples: [
    {
      command: 'stripwright rack keep --least "6 x 1 in" --worth 1.40 --trouble 0.05',
      meaning: 'set the rule for tinplate',
    },
    { command: 'stripwright rack keep', meaning: 'print the rules' },
  ],
  async run(given, environment) {
    const options = new OptionReader(given);
    const units = readUnits(options);
    const change = readChange(given, options, units);
    options.raiseFaults();
    const rules = await withRack(given, environment, (rack) => {
      if (change !== undefined) rack.setKeepRule(change);
      return rack.keepRules();
    });
    const text = given.flag('json')
      ? JSON.stringify(rules.map(keepEntry), null, 2)
      : keepTable(rules, units).join('\n');
    environment.stdout.write(`${text}\n`);
    return EXIT.done;
  },
};

/** The rule to be set; undefined where none is, or where it cannot be read, which is told. */
function readChange(
  given: Given,
  options: OptionReader,
  units: ShopUnits,
): ShopKeepRule | undefined {
  if (SETTING.every((key) => given.text(key) === undefined)) return undefined;
  const metal = readMetal(options) ?? USUAL_METAL;
  const thickness = readStockThickness(options, metal, units);
  const least = options.required('least', (text) => readStockSize(text, units), LEAST);
  const worth = options.optional('worth', parsePrice) ?? 0;
  const trouble = options.optional('trouble', parsePrice) ?? 0;
  if (least === undefined) return undefined;
  return {
    metal,
    ...(thickness === undefined ? {} : { thickness }),
    leastLength: least.length,
    leastWidth: least.width,
    worth: worthOfSquareMetre(worth, units),
    trouble,
  };
}
