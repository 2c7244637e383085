import type { Point } from './outline.js';

/** Prints a number for a message: at most four decimals, none that say nothing. */
export function printNumber(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toFixed(4))) : String(value);
}

/** Prints a length for a message, with its unit. */
export function printLength(millimetres: number): string {
  return `${printNumber(millimetres)} mm`;
}

/** Prints a point for a message. */
export function printPoint({ x, y }: Point): string {
  return `(${printNumber(x)}, ${printNumber(y)})`;
}
