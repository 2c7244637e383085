import type { Limits } from './limits.js';

interface Size {
  readonly length: number;
  readonly width: number;
}

/**
 * Whether cuts that the shear can reach might free a piece from a box. No cut that frees it is shorter
 * than the piece, and the first is as long as the box; so one that lies any other way is never cut from it,
 * in whatever stages, beside whatever else.
 * @param lay gross ticks of the piece as it lies, no more than those of the box
 */
export function withinReach(lay: Size, box: Size, { longestCut, kerf }: Limits): boolean {
  const reach = longestCut + kerf;
  const [shorter, narrower] = [lay.length < box.length, lay.width < box.width];
  const acrossFirst = (!shorter || box.width <= reach) && (!narrower || lay.length <= reach);
  const alongFirst = (!narrower || box.length <= reach) && (!shorter || lay.width <= reach);
  return acrossFirst || alongFirst;
}
