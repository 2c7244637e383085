import type { Reading } from '../faults/reading.js';
import { refuse } from '../faults/reading.js';
import { parsePositiveLength } from '../length/parse-length.js';
import { printLength } from '../length/print-length.js';
import { MILLIMETRES, type ShopUnits } from '../length/unit.js';

/** The smallest mark where none is named. */
export const USUAL_MARK: Readonly<Record<ShopUnits, number>> = { in: MILLIMETRES.in / 32, mm: 0.5 };
/** Finer than any rule; finer still would leave areas in marks inexact. */
export const FINEST_MARK = 0.01;
export const COARSEST_MARK = MILLIMETRES.in;

/** Reads the shop's smallest mark, in millimetres, from 0.01 mm to 1 in. */
export function readMark(text: string, units: ShopUnits): Reading<number> {
  const mark = parsePositiveLength(text, units);
  if (!mark.ok) return mark;
  if (mark.value < FINEST_MARK) return refuse({ code: 'too small', limit: `${FINEST_MARK} mm` });
  if (mark.value > COARSEST_MARK) {
    const limit = printLength(COARSEST_MARK, { units, mark: COARSEST_MARK });
    return refuse({ code: 'too large', limit });
  }
  return mark;
}
