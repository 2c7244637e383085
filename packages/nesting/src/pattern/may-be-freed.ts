import type { Limits } from './limits.js';

interface Size {
  readonly length: number;
  readonly width: number;
}

/**
 * Whether the machine might cut a piece free of a box. No cut that frees it is shorter than the piece, the
 * first is as long as the box, and nothing that is parted may be too narrow; so one that is ruled out
 * here is never cut from it, in whatever stages, beside whatever else.
 * @param lay gross ticks of the piece as it lies, no more than those of the box
 */
export function mayBeFreed(lay: Size, box: Size, limits: Limits): boolean {
  const { longestCut, kerf, narrowest } = limits;
  const reach = longestCut + kerf;
  const least = narrowest + kerf;
  const [shorter, narrower] = [lay.length < box.length, lay.width < box.width];
  if ((shorter && lay.length < least) || (narrower && lay.width < least)) return false;
  const acrossFirst = (!shorter || box.width <= reach) && (!narrower || lay.length <= reach);
  const alongFirst = (!narrower || box.length <= reach) && (!shorter || lay.width <= reach);
  return acrossFirst || alongFirst;
}
