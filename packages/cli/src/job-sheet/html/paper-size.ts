import { type Picture, TRUE_PAGE } from '../job-sheet.js';
import type { PaperSize } from './embed-drawing.js';

/** Taller pictures get a page of their own, in millimetres: the rest is for a heading and the first steps. */
const BESIDE_WORDS = 195;

/** At true scale where it must be; else as wide as a page, or as high. */
export function paperSize({ drawing: { page }, trueScale }: Picture): PaperSize {
  if (trueScale) return { width: page.width, height: page.height };
  const scale = Math.min(TRUE_PAGE.width / page.width, TRUE_PAGE.height / page.height);
  return { width: page.width * scale, height: page.height * scale };
}

/** Whether a picture prints on a page of its own. */
export function fillsPage(picture: Picture): boolean {
  return paperSize(picture).height > BESIDE_WORDS;
}
