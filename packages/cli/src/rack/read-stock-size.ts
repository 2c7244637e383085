import { accept, type Reading, refuse } from '../faults/reading.js';
import { parsePositiveLength } from '../length/parse-length.js';
import { parseSize, type Size } from '../length/parse-size.js';
import { roundMillimetres } from '../length/ticks.js';
import type { Unit } from '../length/unit.js';
import { FINEST_MARK } from '../order/read-mark.js';

/** Thinner than any foil; millimetres. */
const THINNEST = 0.001;

/** The size of a thing on the rack, in millimetres: the longer side is its length. */
export function readStockSize(text: string, units: Unit): Reading<Size> {
  const size = parseSize(text, units);
  if (!size.ok) return size;
  const { length, width } = longerFirst(size.value.length, size.value.width);
  return width < FINEST_MARK ? tooSmall(FINEST_MARK) : accept({ length, width });
}

/** One side of it. */
export function readStockSide(text: string, units: Unit): Reading<number> {
  const side = parsePositiveLength(text, units);
  if (!side.ok) return side;
  const rounded = roundMillimetres(side.value);
  return rounded < FINEST_MARK ? tooSmall(FINEST_MARK) : accept(rounded);
}

/** Two sides in millimetres, rounded as a rack keeps them. */
export function longerFirst(one: number, other: number): Size {
  const [length, width] = [Math.max(one, other), Math.min(one, other)];
  return { length: roundMillimetres(length), width: roundMillimetres(width) };
}

/** A thickness as a rack keeps it. */
export function stockThickness(thickness: number): Reading<number> {
  const rounded = roundMillimetres(thickness);
  return rounded < THINNEST ? tooSmall(THINNEST) : accept(rounded);
}

const tooSmall = (limit: number) => refuse({ code: 'too small', limit: `${limit} mm` });
