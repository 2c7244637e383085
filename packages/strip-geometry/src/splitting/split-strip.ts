import type { Run } from '../develop.js';
import type { Strip } from '../strip.js';
import { StripError } from '../strip-error.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import { dividedRun } from './divided-run.js';
import { evenCuts, type Interval } from './even-cuts.js';

/** Where a strip may be divided. */
export interface SplitOptions {
  /**
   * Millimetres: where no flats will do, curves of at least this radius may be
   * cut too; 25 when absent (common practice).
   */
  readonly gentleRadius?: number;
}

/** One of the strips that a long one is divided into. Its end is joined to the start of the next. */
export interface StripPart {
  /** A strip by itself: its own square end, its own tab, its bends and curves counted from 1. */
  readonly strip: Strip;
  /** How far the part's start lies from the start of the outline, along the strip, millimetres. */
  readonly from: number;
  /** How many bends the parts before it have. */
  readonly bendsBefore: number;
}

/** Millimetres that a part runs on straight before its first bend, for pliers to hold (common practice). */
const LEAST_START = 3;

/** More parts than this are not thought of: a cutter of so many joints is none. */
const MOST_PARTS = 40;

/**
 * Divides a strip that is longer than the longest stock into as few parts as
 * can be, as even as can be, each with a seam of its own like the strip's. It
 * is cut in flats, each time with room for the seam on the flat, or right after
 * a bend as at the strip's own seam; where flats will not do, also in gentle
 * curves. Bends and tight curves are never cut. Together the parts are as long
 * round the cutter as the strip was. A strip that fits is its own only part.
 *
 * @throws StripError naming `stockLength` if it is not above 0, or if no division fits.
 */
export function splitStrip(
  strip: Strip,
  stockLength: number,
  { gentleRadius = 25 }: SplitOptions = {},
): StripPart[] {
  if (!Number.isFinite(stockLength) || stockLength <= 0) {
    const message = `The stock length must be above 0 mm; got ${printLength(stockLength)}.`;
    throw new StripError('stockLength', message);
  }
  if (strip.length <= stockLength) {
    return [{ strip, from: 0, bendsBefore: 0 }];
  }
  const { developed, seam } = strip;
  const longest = stockLength - seam.atStart - seam.atEnd;
  const flats = placesToCut(strip, ({ kind }) => kind === 'flat');
  const all = placesToCut(strip, (run) => {
    return run.kind === 'flat' || (run.kind === 'curve' && run.radius >= gentleRadius);
  });
  const cuts =
    longest <= 0
      ? undefined
      : (evenCuts(developed, longest, flats, MOST_PARTS) ??
        evenCuts(developed, longest, all, MOST_PARTS));
  if (cuts === undefined) {
    throw new StripError('stockLength', noDivision(strip, stockLength, all));
  }
  return partsOf(strip, cuts);
}

/** Where the strip may be cut, from the start of the outline: with room for the seam after each place. */
function placesToCut({ runs, seam }: Strip, mayCut: (run: Run) => boolean): Interval[] {
  return runs.filter(mayCut).flatMap((run): Interval[] => {
    const from = run.from - seam.atStart + seam.flatBefore;
    const after = Math.max(seam.overlap + seam.flatBefore, LEAST_START);
    const to = run.to - seam.atStart - after;
    return from <= to ? [{ from, to }] : [];
  });
}

function noDivision(
  { developed, seam }: Strip,
  stockLength: number,
  places: readonly Interval[],
): string {
  const stops = [0, ...places.flatMap(({ from, to }) => [from, to]), developed];
  const apart = stops.slice(1).map((stop, index) => {
    // Inside a place to cut, any length will do.
    return index % 2 === 0 ? stop - (stops[index] ?? 0) : 0;
  });
  const least = Math.max(...apart) + seam.atStart + seam.atEnd;
  return (
    `The strip cannot be divided into parts of at most ${printLength(stockLength)}: a part between ` +
    `two places to cut, with its ${seam.name}, is ${printLength(least)} long. Take longer stock, a ` +
    'shorter tab, or a smaller cutter.'
  );
}

function partsOf(strip: Strip, cuts: readonly number[]): StripPart[] {
  const start = strip.seam.atStart;
  const ends = [...cuts.map((cut) => snapped(strip, cut + start)), start + strip.developed];
  let rest: readonly Run[] = strip.runs;
  let [from, bendsBefore] = [0, 0];
  return ends.map((end, index) => {
    const [runs, others] = index === ends.length - 1 ? [rest, []] : cutRuns(rest, end);
    const part = { strip: partOf(strip, runs, from, end - start), from, bendsBefore };
    rest = others;
    from = end - start;
    bendsBefore += part.strip.bends.length;
    return part;
  });
}

/** The place on the strip, or the end of a run where it is within the tolerance of one. */
function snapped({ runs }: Strip, at: number): number {
  return runs.find(({ to }) => Math.abs(to - at) <= LENGTH_TOLERANCE)?.to ?? at;
}

/** The runs before and after a place on the strip; a sharp bend just there ends the runs before. */
function cutRuns(runs: readonly Run[], at: number): readonly [readonly Run[], readonly Run[]] {
  const before = runs.filter(({ to }) => to <= at);
  const [next, ...after] = runs.slice(before.length);
  if (next === undefined || next.from >= at) {
    return [before, runs.slice(before.length)];
  }
  const [first, second] = dividedRun(next, at);
  return [
    [...before, first],
    [second, ...after],
  ];
}

/** The strip with these runs of it alone, which lie from `from` to `to` along the outline. */
function partOf(strip: Strip, runs: readonly Run[], from: number, to: number): Strip {
  const { seam } = strip;
  const developed = to - from;
  const moved = runs.map((run): Run => ({ ...run, from: run.from - from, to: run.to - from }));
  const bends = moved
    .filter((run) => run.kind === 'bend')
    .map(({ from, to, direction, angle }, index) => {
      return { number: index + 1, at: (from + to) / 2, from, to, direction, angle };
    });
  const curves = moved
    .filter((run) => run.kind === 'curve')
    .map(({ from, to, radius, direction, angle }) => ({ from, to, radius, direction, angle }));
  const length = seam.atStart + developed + seam.atEnd;
  return { ...strip, length, developed, runs: moved, bends, curves };
}
