import { cutUp, type PatternCut } from '../pattern/cut-up.js';
import type { CuttingRules } from '../pattern/cutting-rules.js';
import type { Part } from '../pattern/part.js';

/**
 * The cuts of a pattern in the order that they are made at a hand shear: stage by
 * stage, strip by strip; in each stage the trims to size come last, those of one
 * setting of the gauge together, since by then the pieces are loose.
 * @param part with its slices in order
 */
export function cutsInOrder(
  part: Part,
  box: { readonly length: number; readonly width: number },
  rules: CuttingRules,
): readonly PatternCut[] {
  const cuts: PatternCut[] = [];
  cutUp(part, box, rules, { cut: (cut) => cuts.push(cut) });
  return cuts.sort(
    (a, b) =>
      a.stage - b.stage ||
      Number(a.trim) - Number(b.trim) ||
      (a.trim && b.trim ? b.near - a.near : 0),
  );
}

/** How often the gauge is set for cuts made in this order; it measures what lies nearer. */
export function gaugeSettings(cuts: readonly PatternCut[]): number {
  return cuts.filter((cut, i) => i === 0 || cuts[i - 1].near !== cut.near).length;
}
