import { oneLine } from '../../drawing/measure-text.js';
import type { Rule } from '../../length/print-length.js';
import { coinsOf, printMoney } from '../../money.js';
import type { PlanFile, PlanFileBlank } from '../../plan-file/plan-file.js';

// How the sections write what a plan tells. Names come last in what they are part of: a name
// that reads from right to left then moves nothing but itself.

export const ruleOf = ({ order }: PlanFile): Rule => ({
  units: order.units,
  mark: order.smallestMark,
});

/** Money in the order's currency. */
export function priceText(amount: number, { order }: PlanFile): string {
  return printMoney(coinsOf(amount) ?? Math.round(amount * 100), order.currency);
}

/** `lengths in inches` */
export const UNIT_NAMES: Readonly<Record<Rule['units'], string>> = {
  in: 'inches',
  mm: 'millimetres',
};

/** The number by which a blank goes on cut maps, templates and lists: 1 for the first of the order. */
export interface Numbered {
  readonly number: number;
  readonly blank: PlanFileBlank;
  /** How many come off the sheets, with spares. */
  readonly count: number;
}

/** Every blank with its number. */
export function numbered({ blanks, spares }: PlanFile): readonly Numbered[] {
  return blanks.map((blank, index) => {
    const extra = spares.find((spare) => spare.blank === blank.id)?.count ?? 0;
    return { number: index + 1, blank, count: blank.quantity + extra };
  });
}

/** `3, Honeycomb hexagon` */
export const numberAndName = ({ number, blank }: Numbered): string =>
  `${number}, ${oneLine(blank.id)}`;
