import type { Seam } from './seam.js';

/** The ends only meet, edge to edge, and are soldered or left. Nothing is added. */
export function buttJoint(): Seam {
  return {
    name: 'butt joint',
    atStart: 0,
    atEnd: 0,
    overlap: 0,
    flatBefore: 0,
    openHem: 0,
    layers: 1,
    lines: [],
    cuts: () => [],
    source: 'nothing is added',
  };
}
