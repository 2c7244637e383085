import { type Area, type Block, NOTHING, paragraph, stack } from './block.js';
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
      return `${many}No. ${number} from ${print(from)} ${along}`;
    });
    return `${print(at)} ${across}: ${words.join('; ')}.`;
  });
  const heading =
    'Too small to number on the sheet. From its lower left corner to that of each piece:';
  return stack(
    area,
    0,
    [heading, ...lines].map(
      (text) => (place: Area) => paragraph(place, 'unnumbered', text, TYPE.small),
    ),
  );
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
