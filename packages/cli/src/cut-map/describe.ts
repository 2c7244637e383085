import { oneLine } from '../drawing/measure-text.js';
import type { CutMap } from './cut-map.js';
import { countWords, layoutWords } from './heading.js';
import { legendRows } from './legend-table.js';
import { dustNote } from './notes.js';
import { printSize } from './print-size.js';
import type { Strips } from './strips.js';

/** The drawing's accessible title. */
export const titleOf = (map: CutMap): string => `${oneLine(map.title)}: ${layoutWords(map)}`;

/** The drawing in words, for who cannot see it. */
export function describe(map: CutMap, strips: Strips): string {
  const { stock, pieces, remnants, printLength } = map;
  const blanks = legendRows(map).map(
    ({ number, name, size, count }) => `${count} of No. ${number}, ${name}, ${size}`,
  );
  const kept = remnants.filter(({ keep }) => keep).map((one) => printSize(one, printLength));
  const sentences = [
    `${countWords(map)} from ${oneLine(stock.name)}, ${stock.kind}, ${printSize(stock, printLength)}.`,
    ...(stock.rolled === undefined ? [] : [`Rolled ${stock.rolled} its length.`]),
    ...[dustNote(map) ?? []].flat(),
    `${map.cuts.length} cuts, ${strips.firstCuts.length} of them first cuts; ${pieces.length} pieces: ${blanks.join('; ')}.`,
    ...(kept.length > 0 ? [`Offcuts to keep: ${kept.join('; ')}.`] : []),
  ];
  return sentences.join(' ');
}
