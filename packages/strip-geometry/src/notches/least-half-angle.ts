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
  /** Of the metal, millimetres. */
  readonly thickness: number;
}

/**
 * Degrees a side that a V-notch must have at least, so that the two hems
 * beside a bend do not run into each other.
 *
 * The hem reaches some way off the wall's face: by its width W when it stands
 * square, by W sin(f) when it stands at an angle f, and only by the metal in it
 * when it is closed. Seen from above, the two inner faces meet at an angle, and
 * at a distance u off the face each hem must end u tan(A / 2) before the corner
 * where the faces meet (the mitre). The V leaves it u tan(half-angle). So a hem
 * that stands square clears if the half-angle is at least A / 2, and it then
 * clears at every other stage as well, since W sin(f) is never more than W.
 *
 * Allowance for the metal: the corner where the inner faces would meet lies
 * R tan(A / 2) beyond the start of the bend, and the bend mark half the bend
 * allowance B. Counted from the mark, a hem that reaches off by u must end
 * (u - R) tan(A / 2) + B / 2 before it. The half-angle returned gives the free
 * edge just that. Within about a thickness of the wall the fold bends along.
 *
 * Source: derived here; see the test that folds hems in the plane.
 */
export function leastHalfAngle(
  { angle, allowance, insideRadius, thickness }: ClosingBend,
  edge: EdgeTreatment,
  stage: HemStage,
): number {
  const { foldedWidth } = edge;
  if (foldedWidth === 0) {
    return 0;
  }
  const reach = hemReach(edge, thickness, stage);
  const gap = (reach - insideRadius) * Math.tan(toRadians(angle) / 2) + allowance / 2;
  return toDegrees(Math.atan(Math.max(gap, 0) / foldedWidth));
}
