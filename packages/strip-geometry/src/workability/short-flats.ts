import type { Strip } from '../strip.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import { flatsOf } from './flats.js';
import type { CheckedLimits } from './limits.js';
import type { WorkabilityWarning } from './warning.js';

/** The flats beside a bend that are too short for the pliers. */
export function shortFlats(strip: Strip, { shortestFlat }: CheckedLimits): WorkabilityWarning[] {
  return flatsOf(strip)
    .filter(({ length, besideBend }) => besideBend && length < shortestFlat - LENGTH_TOLERANCE)
    .map(({ from, to, length }) => ({
      code: 'short flat',
      place: { on: 'flat', from, to },
      measured: length,
      limit: shortestFlat,
      unit: 'mm',
      source: 'common practice',
      message:
        `The flat from ${printLength(from)} to ${printLength(to)} is ${printLength(length)} long; ` +
        `pliers need ${printLength(shortestFlat)} to hold it. Make the cutter larger, or leave the ` +
        'detail out.',
    }));
}
