import { boxOf } from '../drawing/box.js';
import type { Mark } from '../drawing/drawing.js';
import { INK, tint } from '../drawing/ink.js';
import { oneLine } from '../drawing/measure-text.js';
import type { CutMap } from './cut-map.js';
import type { Unit } from './paper.js';
import { pieceLabel } from './piece-label.js';
import { printSize } from './print-size.js';

export interface Pieces {
  readonly shapes: readonly Mark[];
  readonly labels: readonly Mark[];
  /** Pieces with no number in them: the legend says where they lie. */
  readonly unnumbered: CutMap['pieces'];
}

/** Every piece at its place, with its number, name and size as it lies. */
export function drawPieces({ pieces, printLength }: CutMap, unit: Unit): Pieces {
  const drawn = pieces.map((piece) => {
    const box = boxOf(piece);
    const words = {
      number: String(piece.number),
      name: oneLine(piece.name),
      size: printSize(piece, printLength),
    };
    const shape: Mark = {
      kind: 'rect',
      role: 'piece',
      box,
      fill: tint(piece.number),
      stroke: INK.soft,
      strokeWidth: 0.15 * unit,
      hint: `${words.number} ${words.name}, ${words.size}`,
    };
    return { piece, shape, label: pieceLabel(box, words, unit) };
  });
  return {
    shapes: drawn.map(({ shape }) => shape),
    labels: drawn.flatMap(({ label }) => label.marks),
    unnumbered: drawn.flatMap(({ piece, label }) => (label.numbered ? [] : [piece])),
  };
}
