import type { Box } from './box.js';

/** Sheets of the largest size that have the area of all pieces. */
export function sheetsByArea(boxes: readonly Box[], demand: readonly number[]): number {
  const areas = new Map(
    boxes.flatMap(({ lays }) => lays.map(({ piece, length, width }) => [piece, length * width])),
  );
  const largest = Math.max(...boxes.map(({ length, width }) => length * width));
  return demand.reduce((sum, count, piece) => sum + count * (areas.get(piece) ?? 0), 0) / largest;
}
