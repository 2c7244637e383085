import type { Pattern } from './part.js';

/** How sheets of a class are cut, whatever comes of it. */
export type Cutting = Pick<Pattern, 'stockClass' | 'part'>;

/** A pattern and how many sheets are cut so. */
export interface PatternCount<P extends Cutting = Pattern> {
  readonly pattern: P;
  /** At least 1. */
  readonly count: number;
}
