import { printNumber } from '../wording.js';
import { BendError } from './bend-error.js';

/** Refuses a length that is negative or not finite. */
export function checkLength(field: string, value: number): void {
  if (!Number.isFinite(value) || value < 0) {
    const message = `"${field}" must be 0 mm or more; got ${printNumber(value)}.`;
    throw new BendError('out of range', message, field);
  }
}

/** Refuses an angle bent through that is not from 0 to 180 degrees, both included. */
export function checkAngle(angle: number): void {
  if (!(angle >= 0 && angle <= 180)) {
    const message = `"angle" must be from 0 to 180 degrees; got ${printNumber(angle)}.`;
    throw new BendError('out of range', message, 'angle');
  }
}

/** Refuses a neutral-axis factor outside 0 to 1, both included. */
export function checkFactor(factor: number): void {
  if (!(factor >= 0 && factor <= 1)) {
    const message = `"factor" must be from 0 to 1; got ${printNumber(factor)}.`;
    throw new BendError('out of range', message, 'factor');
  }
}

/** Refuses a choice that is not one of those offered. */
export function checkChoice(field: string, choices: readonly string[], value: string): void {
  if (!choices.includes(value)) {
    const message = `"${field}" must be one of ${choices.join(', ')}; got ${value}.`;
    throw new BendError('out of range', message, field);
  }
}
