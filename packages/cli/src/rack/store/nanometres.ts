import { RackError } from '../rack-error.js';

const IN_A_MILLIMETRE = 1_000_000;

/**
 * Millimetres as whole nanometres.
 * @throws RackError where it is no length that metal can have
 */
export function nanometres(millimetres: number, what: string): number {
  const whole = Math.round(millimetres * IN_A_MILLIMETRE);
  if (!Number.isSafeInteger(whole) || whole <= 0) {
    throw new RackError('bad value', `${what} must be a length above zero; found ${millimetres}`);
  }
  return whole;
}

export function millimetres(whole: number): number {
  return whole / IN_A_MILLIMETRE;
}
