import { checkPositive } from './check-positive.js';
import { INCH } from './inch.js';

/**
 * Area of a base box of tinplate: 112 sheets of 14 x 20 in, one side counted.
 * The British basis box of 112 sheets of 14 x 10 in is half of it, and is not
 * what a base weight is given by today.
 *
 * Source: TERMIUM Plus, the term bank of the Government of Canada; trade glossaries.
 */
export const BASE_BOX_SQUARE_INCHES = 112 * 14 * 20;

/** Inches of thickness for a pound a base box. Source: trade glossaries, which call it exact. */
const INCHES_FOR_A_POUND = 0.00011;

/** Kilograms in a pound avoirdupois, exactly (international yard and pound agreement, 1959). */
const POUND = 0.45359237;

/**
 * Thickness in millimetres of tinplate of a base weight in pounds a base box:
 * base weight * 0.00011 in. Plate of 90 lb is 0.0099 in thick. This is the
 * trade's own rule; the density of steel or a gauge table gives other figures.
 *
 * @throws MetalError if the base weight is not above 0.
 */
export function baseWeightThickness(pounds: number): number {
  checkPositive('base weight', pounds, 'lb');
  return pounds * INCHES_FOR_A_POUND * INCH;
}

/**
 * Kilograms a square metre of plate or coating that weighs so many pounds a
 * base box. A coating of 1 lb, both faces together, is 22.4 g a square metre.
 *
 * @throws MetalError if the weight is not above 0.
 */
export function baseWeightPerSquareMetre(pounds: number): number {
  checkPositive('base weight', pounds, 'lb');
  return (pounds * POUND) / (BASE_BOX_SQUARE_INCHES * (INCH / 1000) ** 2);
}
