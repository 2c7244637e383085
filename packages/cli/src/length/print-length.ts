import { TICK_TOLERANCE } from './ticks.js';
import { MILLIMETRES, type ShopUnits } from './unit.js';

/** How a shop writes lengths. */
export interface Rule {
  readonly units: ShopUnits;
  /** The finest line on the rule, in millimetres. */
  readonly mark: number;
}

/** The finest fraction of an inch that is worth writing as one. */
const FINEST_DENOMINATOR = 1024;
/** Decimals of a length that lies off the marks. */
const DECIMALS: Readonly<Record<ShopUnits, number>> = { in: 4, mm: 3 };

/** A length as read off the shop's rule, with its unit: `12 3/16 in`, `309.5 mm`. */
export function printLength(millimetres: number, rule: Rule): string {
  return `${printBareLength(millimetres, rule)} ${rule.units}`;
}

/** `28 x 20 in` */
export function printSize(length: number, width: number, rule: Rule): string {
  return `${printBareLength(length, rule)} x ${printLength(width, rule)}`;
}

/** Like `printLength`, without the unit, for tables that name it in the heading. */
export function printBareLength(millimetres: number, rule: Rule): string {
  const value = millimetres / MILLIMETRES[rule.units];
  if (rule.units === 'in') return inchFraction(value, rule) ?? trimmed(value, DECIMALS.in);
  return trimmed(value, Math.max(DECIMALS.mm, decimalsOf(rule.mark)));
}

/** The thickness of a sheet, which lies off the marks of any rule: `0.011 in`, `0.28 mm`. */
export function printThickness(millimetres: number, units: ShopUnits): string {
  return `${trimmed(millimetres / MILLIMETRES[units], DECIMALS[units])} ${units}`;
}

/** Lowest terms, where the rule is divided by halving and the length is on a mark. */
function inchFraction(inches: number, rule: Rule): string | undefined {
  const denominator = halvedDenominator(rule.mark / MILLIMETRES.in);
  if (denominator === undefined) return undefined;
  const over = Math.round(inches * denominator);
  if (Math.abs(inches * denominator - over) > TICK_TOLERANCE * denominator) return undefined;
  const whole = Math.floor(over / denominator);
  let top = over - whole * denominator;
  let bottom = denominator;
  while (top % 2 === 0 && bottom > 1) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return `${whole}`;
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** The least power of two that makes the mark a whole number of parts of an inch. */
function halvedDenominator(markInches: number): number | undefined {
  for (let denominator = 1; denominator <= FINEST_DENOMINATOR; denominator *= 2) {
    const parts = markInches * denominator;
    if (Math.round(parts) >= 1 && Math.abs(parts - Math.round(parts)) < TICK_TOLERANCE) {
      return denominator;
    }
  }
  return undefined;
}

function decimalsOf(mark: number): number {
  for (let decimals = 0; decimals < 6; decimals += 1) {
    if (Math.abs(mark - Number(mark.toFixed(decimals))) < TICK_TOLERANCE) return decimals;
  }
  return 6;
}

function trimmed(value: number, decimals: number): string {
  const text = Number(value.toFixed(decimals)).toString();
  return text === '-0' ? '0' : text;
}
