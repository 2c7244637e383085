import { bendRules, compareRules, type Outline } from '@stripwright/strip-geometry';
import { roundMillimetres } from '../length/ticks.js';
import { lackingSizes, makeBendRule } from '../order/bend-rule-sizes.js';
import type { CutterItem } from '../order/order.js';
import { specOf } from '../order/strips.js';
import type { MetalRequest } from './metal-options.js';
import { optionName } from './size-options.js';

/** A strip by every bend rule that the given sizes allow, the rule in use first. Millimetres. */
export interface Comparison {
  readonly rules: readonly ComparedRule[];
  /** Rules that could not be made, and the options that they lack. */
  readonly lacking: readonly { readonly rule: string; readonly options: readonly string[] }[];
}

export interface ComparedRule {
  readonly rule: string;
  /** Length of the whole strip, absent where metal that bends so cannot follow the outline. */
  readonly length?: number;
  /** How much longer it is than by the rule in use. */
  readonly difference?: number;
  readonly reason?: string;
}

/** Compares bend rules. @throws OutlineError, StripError */
export function compareAllRules(
  item: CutterItem,
  outline: Outline,
  { bendRule, ruleValues }: MetalRequest,
): Comparison {
  const others = bendRules.filter(({ name }) => name !== bendRule.name);
  const made = others.flatMap(({ name }) => {
    const outcome = makeBendRule(name, ruleValues);
    return outcome.ok ? [outcome.rule] : [];
  });
  const compared = compareRules({ ...specOf(item), outline }, [bendRule, ...made]);
  return {
    rules: compared.map((one) =>
      one.bends
        ? {
            rule: one.rule,
            length: roundMillimetres(one.length),
            difference: roundMillimetres(one.difference),
          }
        : { rule: one.rule, reason: one.reason.message },
    ),
    lacking: others.flatMap((kind) => {
      const options = lackingSizes(kind, ruleValues).map(({ name }) => optionName(name));
      return options.length === 0 ? [] : [{ rule: kind.name, options }];
    }),
  };
}
