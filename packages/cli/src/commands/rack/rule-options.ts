import type { Rule } from '../../length/print-length.js';
import { SHOP_UNITS } from '../../length/unit.js';
import { readChoice } from '../../order/fields.js';
import { readMark, USUAL_MARK } from '../../order/read-mark.js';
import { textOption } from '../command.js';
import type { OptionReader } from '../option-reader.js';

/** How lengths are read and printed. */
export const RULE_OPTIONS = {
  units: textOption('units of bare numbers and of the output: in (the default) or mm'),
  mark: textOption('finest line on the rule (usually 1/32 in or 0.5 mm)'),
};

export function readRule(options: OptionReader): Rule {
  const units = options.optional('units', (text) => readChoice(text, SHOP_UNITS)) ?? 'in';
  const mark = options.optional('mark', (text) => readMark(text, units)) ?? USUAL_MARK[units];
  return { units, mark };
}
