import type { HemFace } from '../edges/hem-face.js';

/**
 * What a bend or a curve does to the hem. `closes`: the hem lies on the inner
 * face of the bend, where there is less room than it needs. `opens`: it lies on
 * the outer face, where it is stretched apart.
 *
 * `in` bends toward the inside of the cutter, so that a hem on the inside
 * closes there and one on the outside opens; `out` is the other way round.
 */
export function hemAtBend(direction: 'in' | 'out', hemFace: HemFace): 'closes' | 'opens' {
  return (direction === 'in') === (hemFace === 'inside') ? 'closes' : 'opens';
}

/**
 * How far the hem is folded while the strip is bent. `closed`: it is folded
 * flat on the wall while the strip is still straight and the whole hem can be
 * folded at once, over a straight edge; only the thickness of its metal stands
 * in the way of the bends. `square`: it stands off the wall by its whole width
 * while the strip is bent and is closed stretch by stretch afterwards.
 */
export type HemStage = 'closed' | 'square';

/** The usual order of work on a long thin strip: hem, then bends (common practice). */
export const USUAL_HEM_STAGE: HemStage = 'closed';
