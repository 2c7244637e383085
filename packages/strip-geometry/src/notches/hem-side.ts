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
 * How far the hem is folded while the strip is bent. `square`: it stands off
 * the wall and is closed afterwards, which needs the most room of all stages.
 * `closed`: it lies flat on the wall before the strip is bent.
 */
export type HemStage = 'square' | 'closed';
