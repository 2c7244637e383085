import type { SizeFace } from '@stripwright/strip-geometry';

/** What an outline can be the size of. */
export const SIZE_FACES: readonly SizeFace[] = ['inside', 'outside', 'middle'];
