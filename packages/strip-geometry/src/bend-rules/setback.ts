import { toRadians } from '../angle.js';
import { BendError } from './bend-error.js';
import { checkAngle, checkLength } from './check-bend.js';

/**
 * Distance from the corner of the outer mould lines back to where the bend
 * starts: tan(angle / 2) * (inside radius + thickness). Degrees bent through,
 * from 0 up to but not including 180, and millimetres (or any one unit).
 *
 * Source: FAA-H-8083-31, Aviation Maintenance Technician Handbook - Airframe,
 * chapter 4, setback.
 *
 * @throws BendError at 180 degrees, where there is no corner to measure from,
 * and for inputs that no bend can have.
 */
export function setback(angle: number, insideRadius: number, thickness: number): number {
  checkAngle(angle);
  checkLength('insideRadius', insideRadius);
  checkLength('thickness', thickness);
  if (angle === 180) {
    const message =
      'A bend of 180 degrees has no setback, since its sides never meet; ' +
      'the angle must be below 180 degrees.';
    throw new BendError('folded flat', message, 'angle');
  }
  return Math.tan(toRadians(angle) / 2) * (insideRadius + thickness);
}
