import {
  BendError,
  type BendRule,
  type BendRuleField,
  type BendRuleKind,
  type BendRuleSizes,
  bendRules,
} from '@stripwright/strip-geometry';
import type { Complaint, FieldFault } from '../faults/fault.js';
import { choiceText } from '../faults/fault-text.js';
import type { Reading } from '../faults/reading.js';
import { parseLength } from '../length/parse-length.js';
import type { Unit } from '../length/unit.js';
import { fieldWords } from './field-words.js';
import { readChoice, readNumber } from './fields.js';

/** The bend rule where none is named: the rule of the bench. */
export const USUAL_BEND_RULE = 'zero thickness';

export const BEND_RULE_NAMES: readonly string[] = bendRules.map(({ name }) => name);

/** A size of one or more bend rules, as an order names it. */
export interface RuleSize {
  readonly name: string;
  readonly field: BendRuleField;
  /** The rules that have it. */
  readonly rules: readonly string[];
}

/** Every size of every bend rule but the thickness, which the metal has whatever the rule. */
export const RULE_SIZES: readonly RuleSize[] = ruleSizes();

/** The values of sizes, by the names that an order has for them; `thickness` among them. */
export type RuleValues = Readonly<Record<string, number | string | undefined>>;

/** A bend rule, or which fields it cannot be made from. */
export type RuleOutcome =
  | { readonly ok: true; readonly rule: BendRule }
  | { readonly ok: false; readonly faults: readonly FieldFault[] };

/** Reads one size of a bend rule from its text. */
export function readRuleSize(
  { kind, choices = [] }: BendRuleField,
  text: string,
  units: Unit,
): Reading<number | string> {
  switch (kind) {
    case 'length':
      return parseLength(text, units);
    case 'factor':
      return readNumber(text);
    case 'choice':
      return readChoice(text, choices);
  }
}

/** The bend rule of that name, from the sizes that were given; sizes that it does not use are ignored. */
export function makeBendRule(name: string, values: RuleValues): RuleOutcome {
  const kind = bendRules.find((rule) => rule.name === name);
  if (kind === undefined) throw new Error(`There is no bend rule "${name}".`);
  const lacking = lackingSizes(kind, values);
  if (lacking.length > 0) return { ok: false, faults: lacking };
  const entries = kind.fields.map((field) => [field.name, values[sizeName(field)]] as const);
  const sizes: BendRuleSizes = Object.fromEntries(
    entries.filter(([, value]) => value !== undefined),
  );
  try {
    return { ok: true, rule: kind.make(sizes) };
  } catch (error) {
    if (!(error instanceof BendError)) throw error;
    const field = kind.fields.find((one) => one.name === error.field);
    const complaint: Complaint = { code: 'bend rule', reason: error.message };
    const at = field === undefined ? 'bend rule' : sizeName(field);
    return { ok: false, faults: [{ name: at, complaint }] };
  }
}

/** What a rule needs and was not given. */
export function lackingSizes(
  { name: rule, fields }: BendRuleKind,
  values: RuleValues,
): readonly FieldFault[] {
  return fields
    .filter((field) => field.required && values[sizeName(field)] === undefined)
    .map((field) => {
      const hint = `${neededText(field)}, which the ${rule} rule needs`;
      return { name: sizeName(field), complaint: { code: 'missing', hint } };
    });
}

function neededText({ kind, meaning, choices = [] }: BendRuleField): string {
  switch (kind) {
    case 'length':
      return `the ${meaning}`;
    case 'factor':
      return `a number such as 0.44, the ${meaning}`;
    case 'choice':
      return choiceText(choices);
  }
}

/** What a size of a bend rule must be, where it is no text at all. */
export function wantedOfRule({ kind, choices = [] }: BendRuleField): Complaint {
  switch (kind) {
    case 'length':
      return { code: 'not a length' };
    case 'factor':
      return { code: 'not a number' };
    case 'choice':
      return { code: 'not a choice', choices };
  }
}

/** `inside radius`; a size that only one rule has carries its rule's name, as `neutral axis factor`. */
function sizeName({ name }: BendRuleField): string {
  const words = fieldWords(name);
  const rules = rulesWith(name);
  return rules.length === 1 ? `${rules[0]} ${words}` : words;
}

function rulesWith(name: BendRuleField['name']): readonly string[] {
  return bendRules
    .filter(({ fields }) => fields.some((one) => one.name === name))
    .map((rule) => rule.name);
}

function ruleSizes(): readonly RuleSize[] {
  const sizes = new Map<string, RuleSize>();
  for (const { fields } of bendRules) {
    for (const field of fields) {
      if (field.name === 'thickness') continue;
      const name = sizeName(field);
      sizes.set(name, { name, field, rules: rulesWith(field.name) });
    }
  }
  return [...sizes.values()];
}
