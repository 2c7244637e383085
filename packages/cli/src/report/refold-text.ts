import { printLength, type Rule } from '../length/print-length.js';
import { ticksUp } from '../length/ticks.js';
import { MILLIMETRES } from '../length/unit.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';

/** What errors of folding are told in: finer than a rule, since they are not marked out. */
const FINEST: Readonly<Record<Rule['units'], number>> = { in: MILLIMETRES.in / 64, mm: 0.1 };

/** What the refold check found of a strip, or of a part of one. */
interface Checked {
  readonly refold?:
    | Pick<NonNullable<PlanFileStrip['refold']>, 'closureGap' | 'largestDeviation'>
    | undefined;
  readonly part?: PlanFileStrip['part'];
}

/** The refold check in one sentence; each figure is rounded up. */
export function refoldText({ refold, part }: Checked, { units }: Rule): string | undefined {
  if (refold === undefined) return undefined;
  const rule = { units, mark: FINEST[units] };
  const within = (millimetres: number) =>
    printLength(Math.max(1, ticksUp(millimetres, rule.mark)) * rule.mark, rule);
  return (
    `Folded at these marks the ends ${part === undefined ? 'meet' : 'come to their places'} within ` +
    `${within(refold.closureGap)}, and the outline ` +
    `strays at most ${within(refold.largestDeviation)} from the drawing.`
  );
}
