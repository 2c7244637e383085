import { FULL_TURN, toRadians } from '../angle.js';
import type { Point } from '../outline.js';
import { turnFrom } from '../point.js';
import type { Piece } from './drawn-path.js';

/** An arc as path data gives it: by its ends. */
export interface EndpointArc {
  readonly from: Point;
  readonly to: Point;
  readonly radiusX: number;
  readonly radiusY: number;
  /** Degrees from the x axis of the user to that of the ellipse. */
  readonly rotation: number;
  readonly large: boolean;
  /** Whether the angle grows from `from` to `to`: clockwise as seen, y being down. */
  readonly growing: boolean;
}

/**
 * The piece that an arc in path data draws, by the conversion from endpoints
 * to centre of SVG 1.1, appendix F.6.5, with the corrections of F.6.6: radii
 * that are too small to reach are enlarged until they just do, a radius of 0
 * makes a straight line, and an arc to where it starts draws nothing.
 */
export function pieceOfArc(arc: EndpointArc): Piece | undefined {
  const { from, to } = arc;
  if (from.x === to.x && from.y === to.y) {
    return undefined;
  }
  let radiusX = Math.abs(arc.radiusX);
  let radiusY = Math.abs(arc.radiusY);
  if (radiusX === 0 || radiusY === 0) {
    return { kind: 'line', from, to };
  }
  const angle = toRadians(arc.rotation % 360);
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];

  // F.6.5, step 1, in units of the radii: half the chord as seen from its middle.
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  let x = (cosine * half.x + sine * half.y) / radiusX;
  let y = (-sine * half.x + cosine * half.y) / radiusY;

  // F.6.6, step 3.
  const reach = Math.hypot(x, y);
  if (reach > 1) {
    radiusX *= reach;
    radiusY *= reach;
    x /= reach;
    y /= reach;
  }

  // Steps 2 and 3: in these units the ellipse is a unit circle, and its centre
  // lies square to the chord.
  const short = Math.min(reach, 1);
  const apart = Math.sqrt(Math.max(1 - short * short, 0)) / short;
  const side = arc.large === arc.growing ? -apart : apart;
  const centreX = side * y;
  const centreY = -side * x;
  const u = { x: cosine * radiusX, y: sine * radiusX };
  const v = { x: -sine * radiusY, y: cosine * radiusY };
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const centre = {
    x: middle.x + u.x * centreX + v.x * centreY,
    y: middle.y + u.y * centreX + v.y * centreY,
  };

  // Step 4.
  const first = { x: x - centreX, y: y - centreY };
  const last = { x: -x - centreX, y: -y - centreY };
  const start = Math.atan2(first.y, first.x);
  const shortest = turnFrom(first, last);
  const sweep = arc.growing
    ? shortest + (shortest < 0 ? FULL_TURN : 0)
    : shortest - (shortest > 0 ? FULL_TURN : 0);
  return { kind: 'ellipse', from, to, centre, u, v, start, sweep };
}
