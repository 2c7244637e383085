import { MILLIMETRES, type Unit } from './unit.js';

/**
 * The geometry speaks of millimetres to many digits; a shop reads `0.32 in`,
 * and angles to a tenth of a degree. Small numbers without a unit may be ratios
 * and stay as they are.
 */
export function inUnits(text: string, units: Unit): string {
  const decimals = units === 'in' ? 3 : 2;
  return text.replaceAll(/(\d+(?:\.\d+)?(?= mm\b)|\d{2,}\.\d{2,})( mm\b)?/g, (_, digits, unit) => {
    if (unit === undefined) return `${Number(Number(digits).toFixed(1))}`;
    return `${Number((Number(digits) / MILLIMETRES[units]).toFixed(decimals))} ${units}`;
  });
}
