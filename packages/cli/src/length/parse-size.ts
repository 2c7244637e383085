import { accept, type Reading, refuse } from '../faults/reading.js';
import { inMillimetres, parseWrittenLength } from './parse-length.js';
import type { Unit } from './unit.js';

/** The two sides of a rectangle, in millimetres. */
export interface Size {
  readonly length: number;
  readonly width: number;
}

/**
 * Reads `28 x 20 in`, `28 in x 20 in`, `20 1/4 x 28`, `711 x 508 mm`. A unit
 * written once holds for both. Millimetres, both above 0.
 */
export function parseSize(text: string, units: Unit): Reading<Size> {
  const sides = text.split(/[x\u00d7]/i);
  const [first, second] = sides;
  if (sides.length !== 2 || first === undefined || second === undefined) {
    return refuse({ code: 'not a size' });
  }
  const writtenLength = parseWrittenLength(first);
  const writtenWidth = parseWrittenLength(second);
  for (const side of [writtenLength, writtenWidth]) {
    if (!side.ok) {
      return side.complaint.code === 'not a length' ? refuse({ code: 'not a size' }) : side;
    }
  }
  if (!writtenLength.ok) return writtenLength;
  if (!writtenWidth.ok) return writtenWidth;
  const length = inMillimetres(writtenLength.value, writtenWidth.value.unit ?? units);
  const width = inMillimetres(writtenWidth.value, writtenLength.value.unit ?? units);
  if (!length.ok) return length;
  if (!width.ok) return width;
  if (length.value === 0 || width.value === 0) return refuse({ code: 'must be above zero' });
  return accept({ length: length.value, width: width.value });
}
