import { accept, type Reading, refuse } from '../faults/reading.js';
import { MOST } from '../order/fields.js';
import type { LayoutTimes } from '../rack/rack.js';

/**
 * Reads `2`, `2x3` or `1, 2x3`: the number of a cut map and how often it was cut,
 * once unless told.
 */
export function readLayoutTimes(text: string): Reading<readonly LayoutTimes[]> {
  const read: LayoutTimes[] = [];
  for (const part of text.split(',')) {
    const match = /^\s*(\d+)\s*(?:[x\u00d7]\s*(\d+))?\s*$/i.exec(part);
    const [number, times] = [Number(match?.[1] ?? 0), Number(match?.[2] ?? 1)];
    if (number < 1 || times < 1 || number > MOST || times > MOST) {
      return refuse({ code: 'not layouts' });
    }
    read.push({ layout: number - 1, times });
  }
  return accept(read);
}
