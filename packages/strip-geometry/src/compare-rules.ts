import { BendError } from './bend-rules/bend-error.js';
import type { BendRule } from './bend-rules/bend-rule.js';
import { type CutterSpec, makeStrip } from './strip.js';

/** What one bend rule makes of a cutter. Millimetres. */
export type RuleComparison =
  | {
      readonly rule: string;
      readonly bends: true;
      /** Length once round the cutter. */
      readonly developed: number;
      /** Length of the whole strip. */
      readonly length: number;
      /** How much longer the strip is than by the first rule that can make it. */
      readonly difference: number;
    }
  | {
      readonly rule: string;
      readonly bends: false;
      /** Why metal that bends so cannot follow the outline. */
      readonly reason: BendError;
    };

/**
 * Sizes one cutter by several bend rules, in the order given, and says how much
 * the strips differ. A rule by which the metal cannot follow the outline is
 * listed with the reason.
 *
 * @throws OutlineError or StripError where the cutter is unsound whatever the rule.
 */
export function compareRules(
  cutter: Omit<CutterSpec, 'bendRule'>,
  rules: readonly BendRule[],
): RuleComparison[] {
  let first: number | undefined;
  return rules.map((bendRule): RuleComparison => {
    const rule = bendRule.name;
    try {
      const { developed, length } = makeStrip({ ...cutter, bendRule });
      first ??= length;
      return { rule, bends: true, developed, length, difference: length - first };
    } catch (error) {
      if (error instanceof BendError) {
        return { rule, bends: false, reason: error };
      }
      throw error;
    }
  });
}
