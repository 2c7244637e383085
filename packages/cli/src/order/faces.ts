import type { HemFace, SizeFace } from '@stripwright/strip-geometry';

/** What an outline can be the size of. */
export const SIZE_FACES: readonly SizeFace[] = ['inside', 'outside', 'middle'];

/** The faces that an edge can be folded to. */
export const HEM_FACES: readonly HemFace[] = ['outside', 'inside'];
