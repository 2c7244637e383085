import { across, cutUp, other, type PatternCut } from './cut-up.js';
import type { CuttingRules } from './cutting-rules.js';
import { mayRest } from './limits.js';
import type { Part } from './part.js';

/**
 * Whether a pattern fits its box and the machine can make every one of its cuts:
 * none too long, nothing parted off too narrow, none of a stage there is not.
 */
export function legal(
  part: Part,
  box: { readonly length: number; readonly width: number },
  rules: CuttingRules,
): boolean {
  const { firstCut } = rules;
  if (part.kind === 'split' && firstCut !== 'either' && part.cuts !== firstCut) return false;
  let good = true;
  const fits = cutUp(part, box, rules, {
    cut: (cut) => {
      good &&= canMake(cut, rules);
    },
  });
  return fits && good;
}

/** Whether the machine can make a cut. */
export function canMake(
  { stage, runs, from, near, trim }: PatternCut,
  { limits, stages }: CuttingRules,
): boolean {
  const lastStage = stages === 'free' ? Number.POSITIVE_INFINITY : stages;
  return (
    stage <= lastStage + (trim ? 1 : 0) &&
    across(from, other(runs)) - limits.kerf <= limits.longestCut &&
    near - limits.kerf >= limits.narrowest &&
    mayRest(across(from, runs) - near, limits)
  );
}
