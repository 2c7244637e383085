import { roundMillimetres } from './ticks.js';
import { MILLIMETRES, type ShopUnits } from './unit.js';

/** Fractions of an inch that people write. */
const DENOMINATORS = [1, 2, 4, 8, 16, 32, 64, 128] as const;
/** Decimals that people write. */
const SHORT: Readonly<Record<ShopUnits, number>> = { in: 4, mm: 3 };
/** A hundred-millionth of an inch is less than half of the millionth of a millimetre that lengths are kept to. */
const EXACT: Readonly<Record<ShopUnits, number>> = { in: 8, mm: 6 };

/**
 * The units that some lengths were typed in, as far as their figures tell: the wanted
 * ones, unless they come out short in the others alone. 300 x 90 mm is not 11.811 in long.
 */
export function unitsAsTyped(lengths: readonly number[], wanted: ShopUnits): ShopUnits {
  const other = wanted === 'in' ? 'mm' : 'in';
  const areShort = (units: ShopUnits) =>
    lengths.every((length) => shortly(length, units) !== undefined);
  return !areShort(wanted) && areShort(other) ? other : wanted;
}

/** A length in some units, without naming them: `17 1/2`, `17.3`, `444.5`; rounded where it is a long decimal. */
export function printAsTyped(millimetres: number, units: ShopUnits): string {
  return shortly(millimetres, units) ?? trimmed(millimetres / MILLIMETRES[units], SHORT[units]);
}

/** Like `printAsTyped`, but so that reading it gives the same length, to a millionth of a millimetre. */
export function printExactly(millimetres: number, units: ShopUnits): string {
  return shortly(millimetres, units) ?? trimmed(millimetres / MILLIMETRES[units], EXACT[units]);
}

/** Like `printExactly`, never as a fraction: thicknesses are not read off a rule. */
export function printExactDecimal(millimetres: number, units: ShopUnits): string {
  return decimal(millimetres, units) ?? trimmed(millimetres / MILLIMETRES[units], EXACT[units]);
}

/** The length in figures that people write, if it is exactly so long. */
function shortly(millimetres: number, units: ShopUnits): string | undefined {
  return (units === 'in' ? inchFraction(millimetres) : undefined) ?? decimal(millimetres, units);
}

function inchFraction(millimetres: number): string | undefined {
  const inch = MILLIMETRES.in;
  for (const denominator of DENOMINATORS) {
    const parts = Math.round((millimetres * denominator) / inch);
    if (!isSame((parts * inch) / denominator, millimetres)) continue;
    const whole = Math.floor(parts / denominator);
    const over = parts - whole * denominator;
    if (over === 0) return `${whole}`;
    return whole === 0 ? `${over}/${denominator}` : `${whole} ${over}/${denominator}`;
  }
  return undefined;
}

function decimal(millimetres: number, units: ShopUnits): string | undefined {
  const text = trimmed(millimetres / MILLIMETRES[units], SHORT[units]);
  return isSame(Number(text) * MILLIMETRES[units], millimetres) ? text : undefined;
}

const isSame = (one: number, other: number) => roundMillimetres(one) === roundMillimetres(other);

function trimmed(value: number, decimals: number): string {
  return value.toFixed(decimals).replace(/\.?0+$/, '');
}
