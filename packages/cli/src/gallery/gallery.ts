import { writeSvg } from '../drawing/svg-sink.js';
import type { Rule } from '../length/print-length.js';
import { drawCard } from './card.js';
import { cardName } from './card-name.js';
import { allExhibits } from './exhibit.js';
import { galleryPage } from './gallery-page.js';

export const PAGE_NAME = 'index.html';

/** A file of the gallery. */
export interface GalleryFile {
  readonly name: string;
  readonly text: string;
}

/** A card for every outline, and the page that shows them all. The same rule gives the same bytes. */
export function gallery(rule: Rule): readonly GalleryFile[] {
  const exhibits = allExhibits(rule);
  const cards = exhibits.map((exhibit) => {
    return { name: cardName(exhibit), text: writeSvg(drawCard(exhibit, rule)) };
  });
  return [...cards, { name: PAGE_NAME, text: galleryPage(exhibits, rule) }];
}
