import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import { type Faces, stripFaces, type TriedWidths } from './strip-family.js';

const known = new WeakMap<readonly Box[], Map<string, Faces>>();

/**
 * The same as `stripFaces`, made but once for the same boxes: several pricers look at the same strips,
 * which for hundreds of offcuts take a second and a hundred megabytes to make.
 */
export function knownFaces(boxes: readonly Box[], limits: Limits, tried: TriedWidths): Faces {
  const { kerf, narrowest, longestCut } = limits;
  // Where any sliver may be parted off, nothing beyond the few is needed.
  const same = narrowest <= 1 && tried === 'needed' ? 'few' : tried;
  const key = [kerf, narrowest, longestCut, same].join(' ');
  const ofBoxes = known.get(boxes) ?? new Map<string, Faces>();
  known.set(boxes, ofBoxes);
  const faces = ofBoxes.get(key) ?? stripFaces(boxes, limits, same);
  ofBoxes.set(key, faces);
  return faces;
}
