import type { Pattern } from './part.js';

/** A pattern and how many sheets are cut so. */
export interface PatternCount {
  readonly pattern: Pattern;
  /** At least 1. */
  readonly count: number;
}
