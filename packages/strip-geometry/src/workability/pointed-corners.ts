import type { Strip } from '../strip.js';
import { printNumber } from '../wording.js';
import type { CheckedLimits } from './limits.js';
import type { WorkabilityWarning } from './warning.js';

/**
 * The corners so pointed that dough sticks in them: the cookie's own tips where
 * the metal bends toward the inside, the scrap between two parts of the cutter
 * where it bends away.
 */
export function pointedCorners(
  { bends }: Strip,
  { mostPointed }: CheckedLimits,
): WorkabilityWarning[] {
  return bends.flatMap(({ number, from, to, angle, direction }): WorkabilityWarning[] => {
    const measured = 180 - angle;
    if (measured >= mostPointed) {
      return [];
    }
    const what = direction === 'in' ? 'A tip of the cookie' : 'A corner between two parts of it';
    const message =
      `${what}, at bend ${number}, has ${printNumber(measured)} degrees between its sides; dough ` +
      `sticks in corners below ${printNumber(mostPointed)}. Open or round it.`;
    return [
      {
        code: 'pointed corner',
        place: { on: 'bend', bend: number, from, to },
        measured,
        limit: mostPointed,
        unit: 'degrees',
        source: 'common practice',
        message,
      },
    ];
  });
}
