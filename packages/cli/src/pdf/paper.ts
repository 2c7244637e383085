import type { Rule } from '../length/print-length.js';

/** Paper to print on. Millimetres. */
export interface Paper {
  readonly width: number;
  readonly height: number;
  /** Left and right; what is left between them is as wide as a page at true scale. */
  readonly side: number;
  readonly top: number;
  /** With the page number in it. */
  readonly foot: number;
}

export const PAPER_NAMES = ['a4', 'letter'] as const;
export type PaperName = (typeof PAPER_NAMES)[number];

/** A4 by ISO 216; Letter is 8 1/2 x 11 in. Both hold a page at true scale between their margins. */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  a4: { width: 210, height: 297, side: 10, top: 12, foot: 16 },
  letter: { width: 215.9, height: 279.4, side: 12.95, top: 10, foot: 14.4 },
};

/** What a shop has in its printer, by the units it works in. */
export const USUAL_PAPER: Readonly<Record<Rule['units'], PaperName>> = { in: 'letter', mm: 'a4' };
