import { boxOf } from '../drawing/box.js';
import type { Box, Mark } from '../drawing/drawing.js';
import { INK, tint } from '../drawing/ink.js';
import { oneLine } from '../drawing/measure-text.js';
import { badgeSize } from './cut-badges.js';
import type { CutMap } from './cut-map.js';
import type { Unit } from './paper.js';
import { type LabelWords, type PieceLabel, pieceLabel } from './piece-label.js';
import { printSize } from './print-size.js';

export interface Pieces {
  readonly shapes: readonly Mark[];
  readonly labels: readonly Mark[];
  /** Pieces with no number in them: the legend says where they lie. */
  readonly unnumbered: CutMap['pieces'];
}

/** Every piece at its place, with its number, name and size as it lies. */
export function drawPieces(map: CutMap, unit: Unit): Pieces {
  const ends = cutEnds(map);
  const drawn = map.pieces.map((piece) => {
    const box = boxOf(piece);
    const words = {
      number: String(piece.number),
      name: oneLine(piece.name),
      size: printSize(piece, map.printLength),
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
    return { piece, shape, label: labelBesideCuts(box, words, ends, unit) };
  });
  return {
    shapes: drawn.map(({ shape }) => shape),
    labels: drawn.flatMap(({ label }) => label.marks),
    unnumbered: drawn.flatMap(({ piece, label }) => (label.says === 'nothing' ? [piece] : [])),
  };
}

/** A piece at least so high has room for a badge above or below its label, in millimetres of paper. */
const ROOM_FOR_BOTH = 10;

/** Leaves the ends of a low piece to the numbers of its cuts, where its label can do without. */
function labelBesideCuts(box: Box, words: LabelWords, ends: CutEnds, unit: Unit): PieceLabel {
  const upright = box.height > box.width;
  const short = upright ? box.width : box.height;
  if (short < ROOM_FOR_BOTH * unit) {
    const { width, height } = badgeSize(ends.most);
    const half = ((upright ? height : width) / 2) * unit;
    const from = ends.has(upright ? 'y' : 'x', upright ? box.y : box.x) ? half : 0;
    const to = ends.has(upright ? 'y' : 'x', upright ? box.y + box.height : box.x + box.width)
      ? half
      : 0;
    const inner = upright
      ? { ...box, y: box.y + from, height: box.height - from - to }
      : { ...box, x: box.x + from, width: box.width - from - to };
    const isStill = upright ? inner.height > inner.width : inner.width >= inner.height;
    const label = pieceLabel(box, words, unit);
    const beside = isStill ? pieceLabel(inner, words, unit) : label;
    return beside.says === label.says ? beside : label;
  }
  return pieceLabel(box, words, unit);
}

interface CutEnds {
  /** The highest number of a cut. */
  readonly most: number;
  /** Whether a cut with a badge lies at a place of the drawing. */
  readonly has: (axis: 'x' | 'y', at: number) => boolean;
}

function cutEnds({ cuts, kerf = 0 }: CutMap): CutEnds {
  const places = new Set<string>();
  const key = (axis: 'x' | 'y', at: number) => `${axis} ${Math.round(at * 100)}`;
  for (const { stage, x1, y1, y2 } of cuts) {
    if (stage === 1) continue;
    const [axis, at, beyond] =
      y1 === y2 ? (['y', -y1, -y1 - kerf] as const) : (['x', x1, x1 + kerf] as const);
    places.add(key(axis, at)).add(key(axis, beyond));
  }
  return { most: cuts.length, has: (axis, at) => places.has(key(axis, at)) };
}
