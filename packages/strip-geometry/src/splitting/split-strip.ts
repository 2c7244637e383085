import { toRadians } from '../angle.js';
import type { Run } from '../develop.js';
import { SEAM_TURN_LIMIT } from '../seam-place.js';
import type { Seam } from '../seams/seam.js';
import type { Strip } from '../strip.js';
import { StripError } from '../strip-error.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength } from '../wording.js';
import { dividedRun } from './divided-run.js';
import { type CutPlaces, evenCuts, type Interval } from './even-cuts.js';

/** Where a strip may be divided. */
export interface SplitOptions {
  /**
   * Millimetres: curves of at least this radius may be cut too, where flats would
   * take more parts; 25 when absent (common practice).
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
 * Divides a strip that is longer than the longest stock, each part with a seam
 * of its own like the strip's. In this order it wants: as few parts as can be;
 * as many of their seams as can be on flats, with room for the seam on the flat,
 * or right after a bend as at the strip's own seam; parts as even as can be. The
 * seams that find no flat lie in gentle curves. Bends and tight curves are
 * never cut, and no seam reaches over one: where that asks for more parts,
 * there are more. Together the parts are as long round the cutter as the strip
 * was. A strip that fits is its own only part.
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
  const places = placesToCut(strip, gentleRadius);
  const cuts = longest <= 0 ? undefined : evenCuts(developed, longest, places, MOST_PARTS);
  if (cuts === undefined) {
    throw new StripError('stockLength', noDivision(strip, stockLength, places.all));
  }
  return partsOf(strip, cuts);
}

/** Where the strip may be cut, from the start of the outline. */
function placesToCut(strip: Strip, gentleRadius: number): CutPlaces {
  const { runs, seam } = strip;
  // Round a tighter curve the lap would turn through more than a seam may.
  const leastRadius = Math.max(gentleRadius, seam.overlap / toRadians(SEAM_TURN_LIMIT));
  const isGentle = (run: Run) => run.kind === 'curve' && run.radius >= leastRadius;
  const stretches: Interval[] = [];
  for (const run of runs.filter((one) => one.kind === 'flat' || isGentle(one))) {
    const last = stretches.at(-1);
    const touches = last !== undefined && run.from - last.to <= LENGTH_TOLERANCE;
    // Flats and gentle curves that follow each other without a bend are one stretch.
    if (touches && !isBendAt(strip, run.from)) {
      stretches[stretches.length - 1] = { from: last.from, to: run.to };
    } else {
      stretches.push({ from: run.from, to: run.to });
    }
  }
  const flats = runs.filter(({ kind }) => kind === 'flat');
  return { preferred: withRoom(flats, seam), all: withRoom(stretches, seam) };
}

function isBendAt({ bends }: Strip, place: number): boolean {
  return bends.some(({ from, to }) => {
    return place >= from - LENGTH_TOLERANCE && place <= to + LENGTH_TOLERANCE;
  });
}

/** The places in stretches of strip that have room for the seam on both sides of them. */
function withRoom(stretches: readonly Interval[], seam: Seam): Interval[] {
  const after = Math.max(seam.overlap + seam.flatBefore, LEAST_START);
  return stretches.flatMap((stretch): Interval[] => {
    const from = stretch.from - seam.atStart + seam.flatBefore;
    const to = stretch.to - seam.atStart - after;
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
