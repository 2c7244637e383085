import { printBareLength, type Rule } from '../length/print-length.js';
import type { PlanFileStrip } from '../plan-file/plan-file.js';

// The running marks of a strip as rows of a table, for whoever prints or draws one.

/** What a column of marks is called, and to which side its cells stand. */
interface MarkColumn {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

export const BEND_COLUMNS: readonly MarkColumn[] = [
  { heading: 'Bend', align: 'right' },
  { heading: 'Mark', align: 'right' },
  { heading: 'Fold', align: 'left' },
  { heading: 'Drawn', align: 'right' },
  { heading: 'Fold to', align: 'right' },
];

/** Where to bend, which way and how far: a row for each bend, in degrees bent through. */
export function bendRows({ bends }: PlanFileStrip, rule: Rule): readonly (readonly string[])[] {
  return bends.map(({ number, at, direction, angle, foldTo }) => [
    `${number}`,
    printBareLength(at, rule),
    direction,
    angle.toFixed(1),
    (foldTo ?? angle).toFixed(1),
  ]);
}

export const CURVE_COLUMNS: readonly MarkColumn[] = [
  { heading: 'Curve', align: 'right' },
  { heading: 'From', align: 'right' },
  { heading: 'To', align: 'right' },
  { heading: 'Radius', align: 'right' },
  { heading: 'Form', align: 'left' },
  { heading: 'Drawn', align: 'right' },
  { heading: 'Halves', align: 'right' },
];

/** How a table names curves, and how it tells the radius of one that opens from it. */
export interface CurveWords {
  /** @param number from 1 */
  readonly name: (number: number) => string;
  readonly radius: (tightest: string, opens: boolean) => string;
}

/**
 * What a curve is called on a template and wherever the packet speaks of it: counted from
 * the square end, like bends, and told from them by its letter.
 */
export const curveName = (number: number): string => `c${number}`;

/** As the packet tells curves. */
export const PACKET_CURVES: CurveWords = {
  name: curveName,
  radius: (tightest, opens) => (opens ? `from ${tightest}` : tightest),
};

/** Where to form, round what and how far: a row for each curve, in degrees of each half. */
export function curveRows(
  { curves }: PlanFileStrip,
  rule: Rule,
  words: CurveWords,
): readonly (readonly string[])[] {
  return curves.map(({ from, to, radius, direction, angle, even, formTo }, index) => [
    words.name(index + 1),
    printBareLength(from, rule),
    printBareLength(to, rule),
    words.radius(printBareLength(Math.round(radius / rule.mark) * rule.mark, rule), even === false),
    direction,
    angle.toFixed(1),
    (formTo ?? [angle / 2, angle / 2]).map((half) => half.toFixed(1)).join(' + '),
  ]);
}
