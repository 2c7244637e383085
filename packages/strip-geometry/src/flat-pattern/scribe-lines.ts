import { point } from '../point.js';
import type { Strip } from '../strip.js';
import { depthAt, type EdgeProfile, stretchesWithin } from './edge-profile.js';
import type { PatternLine } from './flat-pattern.js';

/** A line to scribe on the metal. */
export interface ScribeLine extends PatternLine {
  /** `hem line`: fold of the edge. `seam fold`, `rivets`: of the seam, across the strip. */
  readonly purpose: 'hem line' | 'seam fold' | 'rivets';
}

/**
 * The lines to scribe: every fold of the edge along the strip, where there is
 * metal to fold, and the folds or rivets of the seam across it.
 *
 * @param hemmed what is cut away along the hemmed edge
 * @param cutting what is cut away along the cutting edge
 */
export function scribeLines(
  { edge, seam, length, width }: Strip,
  hemmed: EdgeProfile,
  cutting: EdgeProfile,
): readonly ScribeLine[] {
  const folds = edge.foldLines.flatMap((y) =>
    stretchesWithin(hemmed, y).map(({ from, to }): ScribeLine => {
      return { purpose: 'hem line', from: point(from, y), to: point(to, y) };
    }),
  );
  const acrossStrip = seam.lines.map(({ purpose, end, from }): ScribeLine => {
    const x = end === 'start' ? from : length - from;
    return {
      purpose: purpose === 'fold' ? 'seam fold' : purpose,
      from: point(x, depthAt(hemmed, x)),
      to: point(x, width - depthAt(cutting, x)),
    };
  });
  return [...folds, ...acrossStrip];
}
