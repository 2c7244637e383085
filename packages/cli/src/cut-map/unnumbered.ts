import { type Area, type Block, NOTHING, paragraph, stack } from '../drawing/block.js';
import { textWidth } from '../drawing/measure-text.js';
import type { CutMap } from './cut-map.js';
import { TYPE } from './paper.js';
import type { Strips } from './strips.js';

type Piece = CutMap['pieces'][number];

interface Run {
  readonly number: number;
  /** Along the strip. */
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

/**
 * Where the pieces lie that are too small to hold their number: a line for each strip, with the
 * pieces in it in order. Equal neighbours are counted.
 */
export function drawUnnumbered(
  pieces: readonly Piece[],
  strips: Strips,
  print: (millimetres: number) => string,
  area: Area,
): Block {
  if (pieces.length === 0) return NOTHING;
  const [across, along] = strips.cutsRun === 'x' ? ['up', 'right'] : ['right', 'up'];
  const lines = [...byStrip(pieces, strips)].map(([at, runs]) => {
    const words = runs.map(({ number, count, from }) => {
      const many = count === 1 ? '' : `${count} of `;
      return `${many}No. ${number} at ${print(from - strips.start)}`;
    });
    return `${print(at - strips.start)} ${across}: ${words.join('; ')}.`;
  });
  const heading =
    `Too small to number on the sheet. From its ${strips.start > 0 ? 'trimmed ' : ''}lower left ` +
    `corner to that of each piece, ` +
    `first ${across}, then ${along}:`;
  return stack(area, 0, [
    (place) => paragraph(place, 'unnumbered', heading, TYPE.small),
    (place) => inColumns(lines, place),
  ]);
}

const GUTTER = 4;
const MOST_COLUMNS = 3;

/** Short lines in columns side by side, as many as they leave room for. */
function inColumns(lines: readonly string[], area: Area): Block {
  const longest = Math.max(...lines.map((line) => textWidth(line))) * TYPE.small * area.unit;
  const gutter = GUTTER * area.unit;
  const room = Math.floor((area.width + gutter) / (longest + gutter));
  const columns = Math.max(1, Math.min(MOST_COLUMNS, room));
  const width = (area.width + gutter) / columns - gutter;
  const length = Math.ceil(lines.length / columns);
  const drawn = Array.from({ length: columns }, (_, index) => {
    const left = area.left + index * (width + gutter);
    const column = lines.slice(index * length, (index + 1) * length);
    return stack(
      { ...area, left, width },
      0,
      column.map((text) => (place: Area) => paragraph(place, 'unnumbered', text, TYPE.small)),
    );
  });
  return {
    marks: drawn.flatMap(({ marks }) => marks),
    height: Math.max(...drawn.map(({ height }) => height)),
  };
}

function byStrip(
  pieces: readonly Piece[],
  { cutsRun }: Strips,
): ReadonlyMap<number, readonly Run[]> {
  const placed = pieces
    .map(({ number, x, y, length, width }) =>
      cutsRun === 'x'
        ? { number, at: y, from: x, to: x + length }
        : { number, at: x, from: y, to: y + width },
    )
    .sort((one, other) => one.at - other.at || one.from - other.from);
  const strips = new Map<number, Run[]>();
  for (const { number, at, from, to } of placed) {
    const runs = strips.get(at) ?? [];
    strips.set(at, runs);
    const last = runs.at(-1);
    if (last !== undefined && last.number === number && Math.abs(last.to - from) < 0.01) {
      runs[runs.length - 1] = { ...last, to, count: last.count + 1 };
    } else {
      runs.push({ number, from, to, count: 1 });
    }
  }
  return strips;
}
