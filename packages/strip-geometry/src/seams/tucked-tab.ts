import { checkAboveZero } from '../named-length.js';
import { point } from '../point.js';
import type { EndCut, Seam, SeamedStrip } from './seam.js';

/** Between the tab and the fold it is pushed under (common practice). */
const CLEARANCE = 0.5;
/** How much of each corner of the tab is clipped, at most (common practice). */
const CHAMFER = 3;

/**
 * A tab at the end of the strip that slides into the hem of its start, which
 * is left open that far and then pinched shut over it. The tab lies on the face
 * that the hem is folded to.
 *
 * The tab has no hem of its own: it is cut away to just below the hem line, so
 * that the tab is as wide as the cutter is deep, less a clearance of 0.5 mm.
 * Its corners are clipped at 45 degrees, so that they find their way and do not
 * scratch. The hem of the start is clipped at 45 degrees as well.
 *
 * Source: common practice.
 *
 * @throws StripError if the length is not above 0.
 */
export function tuckedTab(length: number): Seam {
  checkAboveZero('tab', length);
  return {
    name: 'tucked tab',
    atStart: 0,
    atEnd: length,
    overlap: length,
    flatBefore: 0,
    openHem: length + CLEARANCE,
    layers: 2,
    lines: [],
    cuts: (strip) => tabCuts(length, strip),
    source: 'common practice',
  };
}

function tabCuts(tab: number, { length, width, edge }: SeamedStrip): EndCut[] {
  const { notchDepth } = edge;
  const depth = width - edge.allowance;
  const chamfer = Math.min(CHAMFER, tab / 3, depth / 4);
  const clipped: EndCut = {
    edge: 'cutting',
    polygon: [point(length - chamfer, width), point(length, width - chamfer), point(length, width)],
  };
  // Without a hem the tab only lies on the start, as wide as the strip.
  const top = notchDepth === 0 ? 0 : notchDepth + Math.min(CLEARANCE, depth / 10);
  const away: EndCut = {
    edge: 'hemmed',
    polygon: [
      ...(top === 0 ? [] : [point(length - tab, 0), point(length - tab, top)]),
      point(length - chamfer, top),
      point(length, top + chamfer),
      point(length, 0),
    ],
  };
  if (notchDepth === 0) {
    return [away, clipped];
  }
  const entry: EndCut = {
    edge: 'hemmed',
    polygon: [point(0, 0), point(0, notchDepth), point(notchDepth, 0)],
  };
  return [entry, away, clipped];
}
