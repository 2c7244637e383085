import type { BendRule, Metal } from '@stripwright/strip-geometry';
import { choiceText } from '../faults/fault-text.js';
import type { Unit } from '../length/unit.js';
import {
  BEND_RULE_NAMES,
  makeBendRule,
  RULE_SIZES,
  type RuleValues,
  readRuleSize,
  USUAL_BEND_RULE,
} from '../order/bend-rule-sizes.js';
import { readChoice } from '../order/fields.js';
import { METAL_NAMES, metalSpelt, readThickness, USUAL_METAL } from '../order/thickness.js';
import { textOption } from './command.js';
import type { OptionReader } from './option-reader.js';
import { optionKey } from './size-options.js';

const GROUP = 'Metal and how it bends:';

/** Options for the metal, and for every size that a bend rule has. */
export const METAL_OPTIONS = {
  metal: textOption(names(METAL_NAMES.map(optionKey), USUAL_METAL), GROUP),
  thickness: textOption('a length, or as sold: 100lb, 28ga, 16oz', GROUP),
  'bend-rule': textOption(names(BEND_RULE_NAMES.map(optionKey), optionKey(USUAL_BEND_RULE)), GROUP),
  ...Object.fromEntries(
    RULE_SIZES.map(({ name, field, rules }) => {
      const meaning = field.kind === 'choice' ? choiceText(field.choices ?? []) : field.meaning;
      return [optionKey(name), textOption(`${meaning}; of: ${rules.join(', ')}`, GROUP)];
    }),
  ),
};

/** The metal of a strip and how it bends. */
export interface MetalRequest {
  readonly metal: Metal;
  readonly thickness: number | undefined;
  readonly bendRule: BendRule;
  /** All that was given for this bend rule and others. */
  readonly ruleValues: RuleValues;
}

/** Reads the metal and its bend rule; undefined where the rule cannot be made, which is told. */
export function readMetalRequest(options: OptionReader, units: Unit): MetalRequest | undefined {
  const metal = metalSpelt(options.optional('metal', (text) => readChoice(text, METAL_NAMES)));
  const thickness = options.optional('thickness', (text) => readThickness(text, metal, units));
  const ruleName =
    options.optional('bend-rule', (text) => readChoice(text, BEND_RULE_NAMES)) ?? USUAL_BEND_RULE;
  const sizes = RULE_SIZES.map(({ name, field }) => {
    const value = options.optional(optionKey(name), (text) => readRuleSize(field, text, units));
    return [name, value] as const;
  });
  const ruleValues = { ...Object.fromEntries(sizes), thickness };
  const made = makeBendRule(ruleName, ruleValues);
  if (made.ok) return { metal, thickness, bendRule: made.rule, ruleValues };
  for (const { name, complaint } of made.faults) {
    options.complainOnce(optionKey(name), complaint);
  }
  return undefined;
}

/** `tinplate (the default), copper or brass` */
function names(all: readonly string[], usual: string): string {
  return choiceText(all.map((name) => (name === usual ? `${name} (the default)` : name)));
}
