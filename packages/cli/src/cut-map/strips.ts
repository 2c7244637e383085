import type { CutMap } from './cut-map.js';

/** The strips that the first-stage cuts shear the stock into. */
export interface Strips {
  /** Which axis the first-stage cuts run along. */
  readonly cutsRun: 'x' | 'y';
  /** How far the stock reaches across the first-stage cuts. */
  readonly extent: number;
  /** Where its metal starts once the edges are trimmed; distances are told from there. */
  readonly start: number;
  /** Neighbouring edges: from the lower edge up, or from the left edge to the right. */
  readonly spans: readonly Span[];
  /** First-stage cuts by their distance from the lower or the left edge, each with its number in the order of all cuts. */
  readonly firstCuts: readonly { readonly order: number; readonly at: number }[];
}

export interface Span {
  readonly from: number;
  readonly to: number;
  /** What the cutting list calls it; absent where it is not cut further. */
  readonly letter?: string;
}

/** Sums of lengths may be off by so many millimetres. */
const SLACK = 0.01;

/**
 * Reads the strips off a map, the kerfs between them and trimmed edges left out. A
 * map without first-stage cuts is one strip along x.
 */
export function readStrips({
  stock,
  cuts,
  kerf = 0,
  trim = 0,
  strips = [],
}: Pick<CutMap, 'stock' | 'cuts' | 'kerf' | 'trim' | 'strips'>): Strips {
  const first = cuts.flatMap((cut, index) =>
    cut.stage === 1 ? [{ ...cut, number: index + 1 }] : [],
  );
  const lead = first[0];
  const cutsRun = lead === undefined || lead.y1 === lead.y2 ? 'x' : 'y';
  const extent = cutsRun === 'x' ? stock.width : stock.length;
  const firstCuts = first
    .map((cut) => ({ order: cut.number, at: cutsRun === 'x' ? cut.y1 : cut.x1 }))
    .sort((one, other) => one.at - other.at);
  const starts = [trim, ...firstCuts.map(({ at }) => at + kerf)];
  const ends = [...firstCuts.map(({ at }) => at), extent - trim];
  const spans = ends.flatMap((to, index) => {
    const from = starts[index] ?? 0;
    if (to <= from) return [];
    const named = strips.find((strip) => {
      const [start, size] = cutsRun === 'x' ? [strip.y, strip.width] : [strip.x, strip.length];
      const along = cutsRun === 'x' ? strip.length : strip.width;
      const whole = (cutsRun === 'x' ? stock.length : stock.width) - 2 * trim;
      return [start - from, size - (to - from), along - whole].every(
        (off) => Math.abs(off) < SLACK,
      );
    });
    return [{ from, to, ...(named === undefined ? {} : { letter: named.letter }) }];
  });
  return { cutsRun, extent, start: trim, spans, firstCuts };
}
