import type { Reading } from '../faults/reading.js';
import { readLine } from '../order/fields.js';

/** The longest text that is kept with a thing on the rack. */
export const LONGEST_RACK_TEXT = 120;

/** One line about a thing on the rack, trimmed; empty where there is nothing to say. */
export function readRackText(text: string): Reading<string> {
  return readLine(text, LONGEST_RACK_TEXT);
}
