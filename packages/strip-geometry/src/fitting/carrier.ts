import type { Point } from '../outline.js';
import { dot, leftOf, minus } from '../point.js';
import { fittedCircle, fittedLine } from './carrier-fit.js';
import type { RoughPiece } from './fewest-pieces.js';
import type { RingOfPoints } from './ring-of-points.js';
import type { Station } from './smooth-chain.js';

/** The whole line or circle that a stretch of points comes near to, with the way they run. */
export interface Carrier {
  readonly kind: 'line' | 'arc';
  /** The place on it nearest to a point. */
  readonly nearest: (point: Point) => Station;
  /** How far a point lies to the left of it, with the direction in which that grows. */
  readonly offset: (point: Point) => { readonly distance: number; readonly normal: Point };
}

/** The carrier of a stretch by least squares. */
export function carrierOf(ring: RingOfPoints, piece: RoughPiece): Carrier {
  const sums = ring.sums(piece.first, piece.last);
  const circle = piece.kind === 'arc' ? fittedCircle(sums) : undefined;
  if (circle === undefined) {
    const { middle } = fittedLine(sums);
    const heading = { x: Math.cos(piece.heading), y: Math.sin(piece.heading) };
    const normal = leftOf(heading);
    return {
      kind: 'line',
      nearest: (point) => {
        const ahead = dot(minus(point, middle), heading);
        const [x, y] = [middle.x + ahead * heading.x, middle.y + ahead * heading.y];
        return { x, y, heading: piece.heading };
      },
      offset: (point) => ({ distance: dot(minus(point, middle), normal), normal }),
    };
  }
  const { centre, radius } = circle;
  const sense = Math.sign(piece.curvature) || 1;
  return {
    kind: 'arc',
    nearest: (point) => {
      const angle = Math.atan2(point.y - centre.y, point.x - centre.x);
      return {
        x: centre.x + radius * Math.cos(angle),
        y: centre.y + radius * Math.sin(angle),
        heading: angle + (sense * Math.PI) / 2,
      };
    },
    offset: (point) => {
      const out = minus(point, centre);
      const size = Math.max(Math.hypot(out.x, out.y), Number.MIN_VALUE);
      const normal = { x: (-sense * out.x) / size, y: (-sense * out.y) / size };
      return { distance: sense * (radius - size), normal };
    },
  };
}

/** Carriers that meet at a smaller angle, as its sine, have no certain meeting point. */
const LEAST_SINE = 0.15;

/** Where two carriers meet near a point, by Newton's method; undefined where they do not. */
export function meetingNear(a: Carrier, b: Carrier, near: Point): Point | undefined {
  let at = near;
  for (let round = 0; round < 8; round++) {
    const [first, second] = [a.offset(at), b.offset(at)];
    const spread = first.normal.x * second.normal.y - first.normal.y * second.normal.x;
    if (Math.abs(spread) < LEAST_SINE) {
      return undefined;
    }
    const [x, y] = [
      (first.distance * second.normal.y - second.distance * first.normal.y) / spread,
      (second.distance * first.normal.x - first.distance * second.normal.x) / spread,
    ];
    at = { x: at.x - x, y: at.y - y };
  }
  const left = Math.abs(a.offset(at).distance) + Math.abs(b.offset(at).distance);
  return left < 1e-9 ? at : undefined;
}
