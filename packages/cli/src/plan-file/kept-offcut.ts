import type { Size } from '../length/parse-size.js';

/** Whether a remnant is at least as large as the least offcut to keep, either way round. */
export function isKept(remnant: Size, keepFrom: Size | undefined): boolean {
  if (keepFrom === undefined) return false;
  const holds = (length: number, width: number) =>
    remnant.length >= length && remnant.width >= width;
  return holds(keepFrom.length, keepFrom.width) || holds(keepFrom.width, keepFrom.length);
}
