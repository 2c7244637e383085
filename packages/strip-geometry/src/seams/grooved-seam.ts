import { checkAboveZero } from '../named-length.js';
import { point } from '../point.js';
import type { EndCut, Seam, SeamedStrip } from './seam.js';

/**
 * Each end is folded back into a hook, one hook is laid in the other, and the
 * lock is closed with a groover: four layers. A seam of width W takes 3 W.
 * Divided: 1 W before the outline, which is the start's hook, and 2 W after it,
 * which is what lies over the start and the end's hook.
 *
 * The hem would be too thick for the lock, so both ends lose it there, with a
 * slant of 45 degrees beside it. The lock needs a flat on either side.
 *
 * Source: 3 W from texts on tinsmithing and NAVEDTRA 14251, Steelworker vol. 2
 * (the latter from memory); the division and the slant from memory.
 *
 * @throws StripError if the width is not above 0.
 */
export function groovedSeam(width: number): Seam {
  checkAboveZero('seam width', width);
  return {
    name: 'grooved seam',
    atStart: width,
    atEnd: 2 * width,
    overlap: width,
    flatBefore: width,
    openHem: 0,
    layers: 4,
    lines: [
      { purpose: 'fold', end: 'start', from: width },
      { purpose: 'fold', end: 'end', from: width },
    ],
    cuts: (strip) => lockCuts(width, strip),
    source: 'texts on tinsmithing: 3 widths; 1 at one end and 2 at the other (from memory)',
  };
}

function lockCuts(width: number, { length, edge }: SeamedStrip): EndCut[] {
  const { notchDepth } = edge;
  if (notchDepth === 0) {
    return [];
  }
  const lock = 2 * width;
  return [
    {
      edge: 'hemmed',
      polygon: [
        point(0, 0),
        point(0, notchDepth),
        point(lock, notchDepth),
        point(lock + notchDepth, 0),
      ],
    },
    {
      edge: 'hemmed',
      polygon: [
        point(length - lock - notchDepth, 0),
        point(length - lock, notchDepth),
        point(length, notchDepth),
        point(length, 0),
      ],
    },
  ];
}
