import { printNumber } from '../wording.js';
import { MetalError } from './metal-error.js';

/** Refuses a figure that is not above 0 and finite. */
export function checkPositive(field: string, value: number, unit: string): void {
  if (!Number.isFinite(value) || value <= 0) {
    const message = `The ${field} must be above 0 ${unit}; got ${printNumber(value)}.`;
    throw new MetalError(field, message);
  }
}
