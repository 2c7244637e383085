import { checkAboveZero } from '../named-length.js';
import { point } from '../point.js';
import type { EndCut, Seam, SeamedStrip, SeamLine } from './seam.js';

/**
 * The end laps over the start on the outside and is soldered or riveted to it,
 * along its middle if riveted. Hems may not lie between the two: where the hem
 * is folded to the outside the start loses its hem under the lap, and the end's
 * runs on over it; where it is folded to the inside it is the other way round.
 *
 * Source of the usual lap for solder, 1/4 in: E. Thatcher, Making Tin Can Toys,
 * 1919, chapter VI. A riveted lap is at least four rivet diameters, two to
 * either side of the rivets (from memory).
 *
 * @throws StripError if the lap is not above 0.
 */
export function plainLap(lap: number, joined: 'soldered' | 'riveted'): Seam {
  checkAboveZero('lap', lap);
  const rivets: readonly SeamLine[] = [
    { purpose: 'rivets', end: 'start', from: lap / 2 },
    { purpose: 'rivets', end: 'end', from: lap / 2 },
  ];
  return {
    name: `${joined} lap`,
    atStart: 0,
    atEnd: lap,
    overlap: lap,
    flatBefore: 0,
    openHem: 0,
    layers: 2,
    lines: joined === 'riveted' ? rivets : [],
    cuts: (strip) => lapCuts(lap, strip),
    source:
      joined === 'soldered'
        ? 'E. Thatcher, Making Tin Can Toys, 1919, chapter VI: a lap of 1/4 in for solder'
        : 'a lap of at least four rivet diameters (from memory)',
  };
}

function lapCuts(lap: number, { length, edge, hemFace }: SeamedStrip): EndCut[] {
  const { notchDepth } = edge;
  if (notchDepth === 0) {
    return [];
  }
  const [from, to] = hemFace === 'outside' ? [0, lap] : [length - lap, length];
  return [
    {
      edge: 'hemmed',
      polygon: [point(from, 0), point(from, notchDepth), point(to, notchDepth), point(to, 0)],
    },
  ];
}
