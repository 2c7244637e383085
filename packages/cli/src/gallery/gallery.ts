import { writeSvg } from '../drawing/svg-sink.js';
import type { Rule } from '../length/print-length.js';
import type { PacketFile } from '../packet/packet-folder.js';
import { drawCard } from './card.js';
import { cardName } from './card-name.js';
import { allExhibits } from './exhibit.js';
import { galleryPage } from './gallery-page.js';

export const PAGE_NAME = 'index.html';

/** A card for every outline, and the page that shows them all. The same rule gives the same bytes. */
export function gallery(rule: Rule): readonly PacketFile[] {
  const exhibits = allExhibits(rule);
  const cards = exhibits.map((exhibit) => {
    return { name: cardName(exhibit), text: writeSvg(drawCard(exhibit, rule)) };
  });
  return [...cards, { name: PAGE_NAME, text: galleryPage(exhibits, rule) }];
}
