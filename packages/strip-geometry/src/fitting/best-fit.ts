import type { Outline } from '../outline.js';
import { turnAtJoint } from '../segment.js';
import { SLIGHT_TURN } from '../tolerance.js';
import { cornerGuesses } from './corner-guesses.js';
import type { RoughPiece } from './fewest-pieces.js';
import { mergedPieces } from './merged-pieces.js';
import { roughChain, roughRuns } from './rough-chain.js';
import { smoothFit } from './smooth-fit.js';
import { stitchedFit } from './stitched-fit.js';
import { asFit, type Trace } from './trace.js';

/** Shares of the tolerance that are tried for the rough division, loosest first. */
const SHARES = [0.9, 0.7, 0.5, 0.35];

/** The same where not all of them can be tried: the likeliest to do first. */
const LIKELIEST = [0.7, 0.5, 0.9, 0.35];

/** Shares of the tolerance within which stitches keep to the points. */
const STITCHED = [0.9, 0.75];

/** A fit is good enough if it costs no more than this times the rough division, and this more. */
const GOOD = { times: 1.3, more: 3 };

/** What comes of trying to fit a trace. */
export interface Tried {
  /** The best fit; undefined where none was found. */
  readonly fitted: Outline | undefined;
  /** How many points were tried, counted anew for every way. */
  readonly tried: number;
}

/**
 * The fit of lines and arcs with the fewest pieces and bends that is found by
 * trying where corners may be and how roughly the trace may be divided, until
 * one is good enough or `most` points have been tried; once at least.
 */
export function bestFit(trace: Trace, most: number): Tried {
  const { ring, tolerance } = trace;
  let [tried, least]: [number, number] = [0, Infinity];
  let best: Outline | undefined;
  const shares = most < SHARES.length * ring.size ? LIKELIEST : SHARES;
  for (const corners of cornerGuesses(trace)) {
    for (const share of shares) {
      if (tried > 0 && tried + ring.size > most) {
        return { fitted: best, tried };
      }
      tried += ring.size;
      const runs = roughRuns(ring, corners, share * tolerance);
      least = Math.min(least, runs.flat().length + corners.length);
      const fitted = fitOf(trace, corners, runs);
      if (fitted !== undefined && (best === undefined || costOf(fitted) < costOf(best))) {
        best = fitted;
      }
      if (best !== undefined && costOf(best) <= GOOD.times * least + GOOD.more) {
        return { fitted: best, tried };
      }
    }
  }
  return { fitted: best, tried };
}

/** The fit by least squares that a rough division leads to, or else the one that is stitched. */
function fitOf(
  trace: Trace,
  corners: readonly number[],
  runs: readonly (readonly RoughPiece[])[],
): Outline | undefined {
  const { ring, tolerance } = trace;
  const rough = roughChain(ring, corners, runs);
  const smooth = rough && smoothFit(trace, rough);
  if (smooth !== undefined) {
    return smooth;
  }
  for (const share of STITCHED) {
    const pieces = stitchedFit(ring, corners, runs, share * tolerance);
    const fitted = pieces && asFit(trace, mergedPieces(pieces));
    if (fitted !== undefined) {
      return fitted;
    }
  }
  return undefined;
}

/** The work at the bench, roughly: pieces, and as much again for every bend. */
function costOf({ segments }: Outline): number {
  const bends = segments.filter((segment, index) => {
    const next = segments[(index + 1) % segments.length] ?? segment;
    return Math.abs(turnAtJoint(segment, next)) > SLIGHT_TURN;
  });
  return segments.length + bends.length;
}
