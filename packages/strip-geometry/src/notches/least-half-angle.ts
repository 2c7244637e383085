import { toDegrees, toRadians } from '../angle.js';
import type { EdgeTreatment } from '../edges/edge-treatment.js';
import { hemReach } from './hem-reach.js';
import type { HemStage } from './hem-side.js';

/** A bend that closes the hem: the hem lies on its inner face. */
export interface ClosingBend {
  /** Degrees bent through, from 0 up to but not including 180. */
  readonly angle: number;
  /** Length of strip that the bend takes up, millimetres. */
  readonly allowance: number;
  /** Radius of the bend's inner face, millimetres. */
  readonly insideRadius: number;
  /** Of the metal, millimetres; 0 where the bend rule leaves it out, see `hemReach`. */
  readonly thickness: number;
}

/**
 * Degrees a side that a V-notch must have at least, so that the two hems
 * beside a bend do not run into each other.
 *
 * What the hem reaches. Metal that hangs on the hem line at a distance h, along
 * the metal, can be off the wall's face by no more than h. A hem of width W that
 * stands square is off by just that, up to its reach U = W at the free edge. A
 * closed hem is off by U, the metal and the wire in it, from about h = U on;
 * above that lies its fold. So at h it reaches off by min(h, U).
 *
 * What it must leave free, counted from the bend mark. Seen from above, the
 * inner faces of the two walls would meet R tan(A / 2) beyond the start of the
 * bend, which is half the bend allowance B before the mark; and hems that reach
 * off by u meet on the mitre, u tan(A / 2) before that corner. So each must end
 * N(u) = B / 2 + (u - R) tan(A / 2) before the mark. Where the bend is rounder
 * than the hem reaches, the hem lies in its hollow and goes round with it, on
 * an inner radius of R - u: N(u) = B / 2 + (u - R) A / 2 with A in radians.
 *
 * What the V leaves free at h is h tan(half-angle). From h = U on N stays the
 * same while the V opens further, so it must be wide enough at h = U:
 *
 *     tan(half-angle) = N(U) / U.
 *
 * In a sharp bend (R = B = 0) that is half the angle bent through at either
 * stage, and it is enough at every h and for a hem folded to any angle. A bend
 * with a radius asks for a little more or less. Nearer to the hem line than U
 * lies the fold of a closed hem, which bends along with the wall.
 *
 * Source: derived here; see the test that folds hems in the plane.
 */
export function leastHalfAngle(bend: ClosingBend, edge: EdgeTreatment, stage: HemStage): number {
  if (edge.foldedWidth === 0) {
    return 0;
  }
  const reach = hemReach(edge, bend.thickness, stage);
  return toDegrees(Math.atan(mitreGap(bend, reach) / reach));
}

/** How far before the bend mark a hem that reaches so far off the wall must end, millimetres. */
export function mitreGap({ angle, allowance, insideRadius }: ClosingBend, reach: number): number {
  const half = toRadians(angle) / 2;
  const outside = reach - insideRadius;
  const gap = allowance / 2 + outside * (outside > 0 ? Math.tan(half) : half);
  return Math.max(gap, 0);
}
