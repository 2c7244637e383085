import { printBareLength, type Rule } from './print-length.js';
import { roundMillimetres } from './ticks.js';
import { MILLIMETRES, type ShopUnits } from './unit.js';

/** Fractions of an inch that people write. */
const DENOMINATORS = [2, 4, 8, 16, 32, 64, 128] as const;
/** A hundred-millionth of an inch is less than half of the millionth of a millimetre that lengths are kept to. */
const MOST_DECIMALS: Readonly<Record<ShopUnits, number>> = { in: 8, mm: 6 };

/**
 * A length, whole in millionths of a millimetre, without its unit, so that reading it
 * gives the same length again: `17 1/2`, `17.3`, `444.5`. In inches as a fraction where
 * it is one that people write.
 */
export function printExactly(millimetres: number, units: ShopUnits): string {
  return (units === 'in' ? inchFraction(millimetres) : undefined) ?? decimals(millimetres, units);
}

/** Like `printExactly`, never as a fraction: thicknesses are not read off a rule. */
export function printExactDecimal(millimetres: number, units: ShopUnits): string {
  return decimals(millimetres, units);
}

/**
 * A length as the shop writes lengths, without its unit; also one that lies between the
 * marks of the rule, if it is a fraction that people write.
 */
export function printAsTyped(millimetres: number, rule: Rule): string {
  return (
    (rule.units === 'in' ? inchFraction(millimetres) : undefined) ??
    printBareLength(millimetres, rule)
  );
}

function inchFraction(millimetres: number): string | undefined {
  const inch = MILLIMETRES.in;
  for (const denominator of [1, ...DENOMINATORS]) {
    const parts = Math.round((millimetres * denominator) / inch);
    if (roundMillimetres((parts * inch) / denominator) !== roundMillimetres(millimetres)) continue;
    const whole = Math.floor(parts / denominator);
    const over = parts - whole * denominator;
    if (over === 0) return `${whole}`;
    return whole === 0 ? `${over}/${denominator}` : `${whole} ${over}/${denominator}`;
  }
  return undefined;
}

function decimals(millimetres: number, units: ShopUnits): string {
  const value = millimetres / MILLIMETRES[units];
  for (let count = 0; count < MOST_DECIMALS[units]; count += 1) {
    const short = Number(value.toFixed(count));
    if (roundMillimetres(short * MILLIMETRES[units]) === roundMillimetres(millimetres)) {
      return short.toFixed(count);
    }
  }
  return value.toFixed(MOST_DECIMALS[units]);
}
