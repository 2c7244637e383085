import type { Strip } from '../strip.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { type Place, placesOf, type Stretch } from './places.js';
import { roundMarks } from './round-marks.js';

/** A curve that begins or ends at a mark. */
export interface CurveAtMark {
  /** 1 for the first curve from the square end. */
  readonly number: number;
  /** Tightest radius of the drawn line, millimetres. */
  readonly radius: number;
  /** Whether it keeps that radius all along. */
  readonly even: boolean;
  readonly direction: 'in' | 'out';
  /** Degrees formed through. */
  readonly angle: number;
}

/** One line to scribe across the strip, and what to do there. Distances from the square end. */
export interface StripMark {
  /** Where to scribe: a whole number of smallest marks. */
  readonly at: number;
  /** The true place, at most half a smallest mark away. */
  readonly exact: number;
  /** The bend that has its middle here. */
  readonly bend?: {
    readonly number: number;
    readonly direction: 'in' | 'out';
    /** Degrees bent through. */
    readonly angle: number;
  };
  /** The curve that is formed up to here. Beside a bend its end is taken at the bend's mark. */
  readonly curveEnds?: CurveAtMark;
  /** The curve that is formed from here on. */
  readonly curveStarts?: CurveAtMark;
  /** Given where the outline's part of the strip starts after, or ends before, the seam. */
  readonly seam?: 'starts' | 'ends';
}

/** Two marks whose true places are nearer than one smallest mark. */
export interface CrowdedMarks {
  /** Index of the first of the two in the list. */
  readonly index: number;
  /** True distance between them. */
  readonly apart: number;
}

/** The marks of a strip, in the order a hand scribes them. Millimetres. */
export interface MarkedOut {
  readonly smallestMark: number;
  /** Ascending; two that crowd each other may share a line of the rule. */
  readonly marks: readonly StripMark[];
  readonly crowded: readonly CrowdedMarks[];
}

/**
 * The marks that a hand follows: running distances from the square end, each
 * rounded by itself to the rule's smallest mark, so that errors do not add up.
 * Rounding keeps their order. Marks nearer to each other than a rule can show
 * are listed as crowded.
 *
 * @throws StripError if the smallest mark is not above 0.
 */
export function markOut(strip: Pick<Strip, 'runs'>, smallestMark: number): MarkedOut {
  const { places, stretches } = placesOf(strip.runs);
  const rounded = roundMarks(
    places.map(({ at }) => at),
    smallestMark,
  );
  const marks = places
    .map((place, index): StripMark => {
      const [before, after] = [stretches[index - 1], stretches[index]];
      return {
        at: rounded[index] ?? place.at,
        exact: place.at,
        ...bendAt(place),
        ...(before?.kind === 'curve' ? { curveEnds: curveAt(before) } : {}),
        ...(after?.kind === 'curve' ? { curveStarts: curveAt(after) } : {}),
        ...seamAt(place, index, places.length),
      };
    })
    // The square end itself needs no mark.
    .filter(({ exact }) => exact > LENGTH_TOLERANCE);
  const crowded = marks
    .slice(1)
    .map((mark, index) => ({ index, apart: mark.exact - (marks[index]?.exact ?? 0) }))
    .filter(({ apart }) => apart < smallestMark - LENGTH_TOLERANCE);
  return { smallestMark, marks, crowded };
}

function bendAt({ bend }: Place): Pick<StripMark, 'bend'> {
  if (bend === undefined) {
    return {};
  }
  const { direction, angle } = bend.run;
  return { bend: { number: bend.number, direction, angle } };
}

function curveAt({ number, run }: Extract<Stretch, { kind: 'curve' }>): CurveAtMark {
  const { radius, even, direction, angle } = run;
  return { number, radius, even, direction, angle };
}

function seamAt(place: Place, index: number, count: number): Pick<StripMark, 'seam'> {
  if (index === 0) {
    return { seam: 'starts' };
  }
  return index === count - 1 && place.bend === undefined ? { seam: 'ends' } : {};
}
