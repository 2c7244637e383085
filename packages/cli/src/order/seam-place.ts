import type { SeamPlace } from '@stripwright/strip-geometry';
import { accept, type Reading, refuse } from '../faults/reading.js';
import { parseLength } from '../length/parse-length.js';
import type { Unit } from '../length/unit.js';

/**
 * Reads where the ends of a strip meet: the number of a corner, such as `3`; a
 * distance along the outline, such as `2 in` or `1 1/2`; or `middle`, of the
 * longest flat. A bare whole number is a corner.
 */
export function readSeamPlace(text: string, units: Unit): Reading<SeamPlace> {
  const word = text.trim().toLowerCase();
  if (word === 'middle') return accept('middle of the longest flat');
  if (/^\d{1,9}$/.test(word)) return accept({ corner: Number(word) });
  const distance = parseLength(word, units);
  if (distance.ok) return accept({ distance: distance.value });
  return distance.complaint.code === 'not a length'
    ? refuse({ code: 'not a seam place' })
    : distance;
}
