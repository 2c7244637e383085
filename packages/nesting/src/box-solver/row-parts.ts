import type { Limits } from '../pattern/limits.js';

/**
 * Which parts make up the best row of an extent. What they leave is one rest: a
 * remnant, or no more than a kerf beyond the only part.
 * @param best what an extent is worth, cut or not
 * @returns the extent itself where it is not best cut
 */
export function chainParts(
  extent: number,
  limits: Limits,
  best: (extent: number) => number,
): readonly number[] {
  const least = limits.narrowest + limits.kerf;
  const parts = partsAndRemnant(extent, least, best);
  if (parts[0] !== extent) return parts;
  // A rest that the kerf takes is not added to another, or a remnant would be too narrow.
  for (let x = Math.max(least, extent - limits.kerf); x < extent; x++) {
    if (best(x) === best(extent)) return [x];
  }
  return parts;
}

function partsAndRemnant(
  extent: number,
  least: number,
  best: (extent: number) => number,
): readonly number[] {
  const worth = best(extent);
  if (worth === 0) return [];
  for (let x = least; x <= extent - least; x++) {
    if (best(x) === worth) return partsAndRemnant(x, least, best);
  }
  // Nearest the middle first, so that long rows are not taken apart piece by piece.
  for (let x = extent >> 1; x >= least; x--) {
    if (best(x) + best(extent - x) === worth) {
      return [x, extent - x].flatMap((part) => partsAndRemnant(part, least, best));
    }
  }
  return [extent];
}

/**
 * Which parts make up the best row of an extent, where a row has one rest only.
 * @param worth of the row
 * @param best what an extent is worth with no rest, or one that is left
 * @param uncut what it is worth as one part
 */
export function rowParts(
  extent: number,
  limits: Limits,
  worth: number,
  best: (extent: number) => number,
  uncut: (extent: number) => number,
): readonly number[] {
  const least = limits.narrowest + limits.kerf;
  let left = extent;
  while (best(left) !== worth) {
    left--;
    if (left < 0) throw new Error(`no row within ${extent} ticks is worth so much`);
  }
  const parts: number[] = [];
  for (;;) {
    const worth = best(left);
    if (worth === 0) return parts;
    if (uncut(left) === worth) return [...parts, left];
    let part = least;
    while (part <= left - least && !explains(part, worth)) part++;
    if (part > left - least) throw new Error(`no part explains the worth of ${left} ticks`);
    parts.push(part);
    if (uncut(part) === worth) return parts;
    left -= part;
  }

  function explains(part: number, worth: number): boolean {
    if (uncut(part) === worth) return true;
    return uncut(part) > 0 && uncut(part) + best(left - part) === worth;
  }
}
