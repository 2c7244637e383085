import type { ShopUnits } from '../length/unit.js';

/** The international avoirdupois pound is 0.45359237 kg exactly; it has 16 ounces. */
const GRAMS_A_POUND = 453.59237;
const OUNCES_A_POUND = 16;
const SQUARE_INCH = 25.4 * 25.4;

/** `340 g`, `1.24 kg`; `7.3 oz`, `2.06 lb` in a shop that works in inches. */
export function printWeight(grams: number, units: ShopUnits): string {
  if (units === 'mm') {
    return grams < 999.5 ? `${Math.round(grams)} g` : `${(grams / 1000).toFixed(2)} kg`;
  }
  const pounds = grams / GRAMS_A_POUND;
  return pounds < 1 ? `${(pounds * OUNCES_A_POUND).toFixed(1)} oz` : `${pounds.toFixed(2)} lb`;
}

/** Square millimetres as `82 sq in`, or `529 sq cm` in a shop that works in millimetres. */
export function printArea(squareMillimetres: number, units: ShopUnits): string {
  return units === 'in'
    ? `${(squareMillimetres / SQUARE_INCH).toFixed(0)} sq in`
    : `${(squareMillimetres / 100).toFixed(0)} sq cm`;
}
