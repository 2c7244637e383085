import { type Area, type Block, NOTHING, paragraph, stack } from '../drawing/block.js';
import { inColumns } from './columns.js';
import type { CutMap } from './cut-map.js';
import { equalSteps, stepWords } from './equal-steps.js';
import { TYPE } from './paper.js';
import type { Strips } from './strips.js';
import type { Telling } from './untold-cuts.js';

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
 * pieces in it in order. Equal neighbours are counted, equal strips told together. Or no
 * more than how many of each there are, where the sheet would get too small.
 */
export function drawUnnumbered(
  pieces: readonly Piece[],
  strips: Strips,
  telling: Telling,
  print: (millimetres: number) => string,
  area: Area,
): Block {
  if (pieces.length === 0) return NOTHING;
  if (telling === 'numbers') {
    const counts = new Map<number, number>();
    for (const { number } of pieces) counts.set(number, (counts.get(number) ?? 0) + 1);
    const words = [...counts]
      .sort(([one], [other]) => one - other)
      .map(([number, count]) => `${count} of No. ${number}`);
    const text = `Too small to number on the sheet, and told by the cutting list: ${words.join('; ')}.`;
    return paragraph(area, 'unnumbered', text, TYPE.small);
  }
  const [across, along] =
    strips.cutsRun === 'x' ? (['up', 'right'] as const) : (['right', 'up'] as const);
  const rows = [...byStrip(pieces, strips)].map(([at, runs]) => ({
    from: at - strips.start,
    runs,
  }));
  const lines = equalSteps(rows, isLike).map((group) => {
    const words = group[0]?.runs.map(({ number, count, from }) => {
      const many = count === 1 ? '' : `${count} of `;
      return `${many}No. ${number} at ${print(from - strips.start)}`;
    });
    const where = stepWords(
      group.map(({ from }) => from),
      across,
      print,
    );
    return `${where}: ${words?.join('; ')}.`;
  });
  const heading =
    `Too small to number on the sheet. From its ${strips.start > 0 ? 'trimmed ' : ''}lower left ` +
    `corner to that of each piece, ` +
    `first ${across}, then ${along}:`;
  return stack(area, 0, [
    (place) => paragraph(place, 'unnumbered', heading, TYPE.small),
    (place) => inColumns(lines, 'unnumbered', place),
  ]);
}

interface Row {
  readonly from: number;
  readonly runs: readonly Run[];
}

/** Whether the same pieces lie at the same places of two strips. */
function isLike(one: Row, other: Row): boolean {
  return (
    one.runs.length === other.runs.length &&
    one.runs.every((run, index) => {
      const like = other.runs[index];
      return (
        run.number === like?.number &&
        run.count === like.count &&
        Math.abs(run.from - like.from) < 0.01 &&
        Math.abs(run.to - like.to) < 0.01
      );
    })
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
