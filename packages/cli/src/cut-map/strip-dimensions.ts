import type { Box, LineMark, Mark } from '../drawing/drawing.js';
import { INK } from '../drawing/ink.js';
import { LINE_HEIGHT, textWidth } from '../drawing/measure-text.js';
import { spreadLabels } from '../drawing/spread-labels.js';
import { TYPE, type Unit } from './paper.js';
import type { Rail } from './rail.js';
import type { Span, Strips } from './strips.js';

/** Distances from the stock's edge, in millimetres of paper. */
const LINE = 3;
const BRACKET = 4;
const LABEL = 4.8;
/** How far labels may stand beyond the stock's corners. */
const OVERHANG = 3;

interface Entry extends Span {
  readonly text: string;
  readonly strips: number;
}

export interface StripDimensions {
  readonly marks: readonly Mark[];
  /** How many strips carry no width because there was no room. */
  readonly leftOut: number;
}

/**
 * How much paper the widths need beside the stock; none if the stock is one strip.
 *
 * @param unit what the page is drawn at, as far as known: it decides which strips share a label
 */
export function stripDimensionsDepth(
  strips: Strips,
  print: (mm: number) => string,
  unit: Unit,
): number {
  if (strips.spans.length < 2) return 0;
  const texts = entriesAt(strips, print, unit).map(({ text }) => textWidth(text));
  return LABEL + Math.max(...texts) * TYPE.small + 1;
}

/**
 * A dimension line along the edge that the first cuts meet, with each strip's width.
 * Where strips are too narrow for a line of text, equal neighbours share one label, `7 × 32 mm`,
 * and labels move apart on leaders; the narrowest go without if all else fails.
 */
export function stripDimensions(
  strips: Strips,
  rail: Rail,
  unit: Unit,
  page: Box,
  print: (mm: number) => string,
): StripDimensions {
  if (strips.spans.length < 2) return { marks: [], leftOut: 0 };
  const room = { from: -OVERHANG * unit, to: strips.extent + OVERHANG * unit };
  const line = LINE_HEIGHT * unit;
  const entries = entriesAt(strips, print, unit);
  const size = entries.length * line * TYPE.small <= room.to - room.from ? TYPE.small : TYPE.least;
  const kept = widest(entries, Math.floor((room.to - room.from) / (line * size)));
  const centres = spreadLabels(kept.map(middle), line * size, room.from, room.to);
  const labels = kept.flatMap((entry, index) => {
    const along = centres[index] ?? middle(entry);
    const { text } = entry;
    return [
      ...leader(entry, along, rail, unit),
      rail.text({
        role: 'strip-width',
        text,
        along,
        out: LABEL * unit,
        size: size * unit,
        room: page,
      }),
    ];
  });
  const labelled = kept.reduce((sum, entry) => sum + entry.strips, 0);
  return {
    marks: [...dimensionLine(strips, rail, unit), ...labels],
    leftOut: strips.spans.length - labelled,
  };
}

const middle = ({ from, to }: Span): number => (from + to) / 2;

function entriesAt(strips: Strips, print: (mm: number) => string, unit: Unit): readonly Entry[] {
  return sharedByEquals(strips.spans, print, LINE_HEIGHT * TYPE.small * unit);
}

/** Joins neighbours of equal width that are too narrow for a label each; named ones with named ones. */
function sharedByEquals(
  spans: readonly Span[],
  print: (mm: number) => string,
  least: number,
): readonly Entry[] {
  const runs: { readonly width: string; readonly spans: Span[] }[] = [];
  for (const span of spans) {
    const width = print(span.to - span.from);
    const last = runs.at(-1);
    const isNamed = last?.spans[0]?.letter !== undefined;
    const isLike = last?.width === width && isNamed === (span.letter !== undefined);
    if (isLike && span.to - span.from < least) last.spans.push(span);
    else runs.push({ width, spans: [span] });
  }
  return runs.flatMap(({ width, spans: own }): readonly Entry[] => {
    const [first, last] = [own[0], own.at(-1)];
    if (first === undefined || last === undefined) return [];
    const text = own.length === 1 ? width : `${own.length} × ${width}`;
    const letters = first === last ? first.letter : `${first.letter}–${last.letter}`;
    const named = first.letter === undefined ? text : `${letters}: ${text}`;
    return [{ from: first.from, to: last.to, text: named, strips: own.length }];
  });
}

function widest(entries: readonly Entry[], count: number): readonly Entry[] {
  if (entries.length <= count) return entries;
  const ranked = [...entries].sort((one, other) => other.to - other.from - (one.to - one.from));
  const kept = new Set(ranked.slice(0, count));
  return entries.filter((entry) => kept.has(entry));
}

function dimensionLine(strips: Strips, rail: Rail, unit: Unit): readonly LineMark[] {
  const ends = strips.spans.flatMap(({ from, to }) => [from, to]);
  const edges = [...new Set([0, ...ends, strips.extent])];
  const thin = (from: [number, number], to: [number, number]): LineMark => ({
    kind: 'line',
    points: [rail.at(...from), rail.at(...to)],
    stroke: INK.soft,
    strokeWidth: 0.18 * unit,
  });
  const tick = 0.6 * unit;
  const out = LINE * unit;
  return [
    thin([0, out], [strips.extent, out]),
    ...edges.flatMap((edge) => [
      thin([edge, 0.8 * unit], [edge, out + tick]),
      thin([edge - tick, out - tick], [edge + tick, out + tick]),
    ]),
  ];
}

/** Ties a label to its strips if it has moved away from them or stands for several. */
function leader(entry: Entry, along: number, rail: Rail, unit: Unit): readonly LineMark[] {
  const inset = Math.min(0.5 * unit, (entry.to - entry.from) / 4);
  const pen = { stroke: INK.soft, strokeWidth: 0.18 * unit };
  const bracket: LineMark = {
    kind: 'line',
    points: [
      rail.at(entry.from + inset, BRACKET * unit),
      rail.at(entry.to - inset, BRACKET * unit),
    ],
    ...pen,
  };
  const middleOf = middle(entry);
  const moved = Math.abs(along - middleOf) > 0.3 * unit;
  const start = entry.strips > 1 ? BRACKET : LINE;
  const tie: LineMark = {
    kind: 'line',
    points: [rail.at(middleOf, start * unit), rail.at(along, (LABEL - 0.3) * unit)],
    ...pen,
  };
  return [...(entry.strips > 1 ? [bracket] : []), ...(moved || entry.strips > 1 ? [tie] : [])];
}
