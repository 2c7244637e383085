import type { Arc, Line, Point } from '../outline.js';
import { distance } from '../point.js';
import type { Carrier } from './carrier.js';
import type { RingOfPoints } from './ring-of-points.js';
import type { Station } from './smooth-chain.js';
import { arcFrom, arcTo, distanceToPiece, twoArcs } from './tangent-arcs.js';

/** Where on its stretch a carrier may be left or joined, as shares of the stretch. */
const SHARES = [0, 0.15, 0.4, 0.6, 0.85, 1];

/** How many carriers on a stitch may lead. */
const FARTHEST = 3;

/** A line counts 1, each arc a little more, so that a line is taken where either would do. */
const ARC_COST = 1.01;

/** Points of one stitch that are looked at, about. */
const MOST_LOOKED_AT = 40;

/** Points on either side of a corner that may belong to the other side. */
const CORNER_DOUBT = 2;

/** A stretch of points with the carrier they lie near. */
export interface Stretch {
  readonly carrier: Carrier;
  readonly first: number;
  readonly last: number;
}

/** A place where one piece may give way to the next. */
export interface Node {
  /** Number of the point it belongs to. */
  readonly number: number;
  /** Which stretch it lies on; -1 or the number of stretches for the corners at the ends. */
  readonly stretch: number;
  readonly point: Point;
  readonly isCorner: boolean;
  /** Undefined at a corner where any direction will do. */
  readonly station: Station | undefined;
}

/** Corners between which a run lies, by number, and where they are put. */
export interface RunEnds {
  readonly start: Node;
  readonly finish: Node;
}

interface Reached {
  readonly cost: number;
  readonly pieces: readonly (Arc | Line)[];
  readonly before: Reached | undefined;
}

/** The cheapest way from the start to the finish of a run, over the nodes between. */
export function stitchedRun(
  ring: RingOfPoints,
  stretches: readonly Stretch[],
  { start, finish }: RunEnds,
  tolerance: number,
): readonly (Arc | Line)[] | undefined {
  const between = stretches.flatMap((stretch, index) => nodesOf(ring, stretch, index));
  const nodes = [
    start,
    ...cornerOn(stretches, 0, start),
    ...between,
    ...cornerOn(stretches, stretches.length - 1, finish),
    finish,
  ];
  const reached: (Reached | undefined)[] = nodes.map((node) =>
    node.number === start.number && node.point === start.point
      ? { cost: 0, pieces: [], before: undefined }
      : undefined,
  );
  nodes.forEach((from, index) => {
    const here = reached[index];
    if (here === undefined) {
      return;
    }
    for (let later = index + 1; later < nodes.length; later++) {
      const to = nodes[later];
      if (to === undefined || to.stretch > from.stretch + FARTHEST) {
        break;
      }
      const known = reached[later]?.cost ?? Infinity;
      const isSame = from.stretch === to.stretch;
      const least = isSame || !from.station || !to.station ? 1 : 2 * ARC_COST;
      if (to.number <= from.number || here.cost + least >= known) {
        continue;
      }
      const carrier = isSame ? stretches[from.stretch]?.carrier : undefined;
      const pieces = piecesBetween(from, to, carrier);
      if (
        pieces !== undefined &&
        staysNear(ring, pieces, surely(from, 1), surely(to, -1), tolerance)
      ) {
        const cost = pieces.reduce(
          (sum, { kind }) => sum + (kind === 'arc' ? ARC_COST : 1),
          here.cost,
        );
        if (cost < known) {
          reached[later] = { cost, pieces, before: here };
        }
      }
    }
  });
  const ends = nodes.flatMap((node, index) => {
    const end = node.point === finish.point && node.number === finish.number && reached[index];
    return end ? [end] : [];
  });
  const [best] = ends.sort((a, b) => a.cost - b.cost);
  if (best === undefined) {
    return undefined;
  }
  const parts: (readonly (Arc | Line)[])[] = [];
  for (let at: Reached | undefined = best; at !== undefined; at = at.before) {
    parts.unshift(at.pieces);
  }
  return parts.flat();
}

function nodesOf(ring: RingOfPoints, stretch: Stretch, index: number): readonly Node[] {
  const { carrier, first, last } = stretch;
  const numbers = new Set(SHARES.map((share) => Math.round(first + share * (last - first))));
  return [...numbers].map((number) => {
    const station = carrier.nearest(ring.at(number));
    return {
      number,
      stretch: index,
      point: { x: station.x, y: station.y },
      isCorner: false,
      station,
    };
  });
}

/** A corner as a node of the stretch beside it, if it lies on its carrier. */
function cornerOn(stretches: readonly Stretch[], index: number, corner: Node): readonly Node[] {
  const carrier = stretches[index]?.carrier;
  if (carrier === undefined || corner.station !== undefined) {
    return [];
  }
  const station = carrier.nearest(corner.point);
  return distance(station, corner.point) < 1e-8 ? [{ ...corner, stretch: index, station }] : [];
}

function piecesBetween(
  from: Node,
  to: Node,
  carrier: Carrier | undefined,
): readonly (Arc | Line)[] | undefined {
  const one = (piece: Arc | Line | undefined) => piece && [piece];
  if (carrier?.kind === 'line' || (from.station === undefined && to.station === undefined)) {
    const isLong = distance(from.point, to.point) > 1e-6;
    return isLong ? [{ kind: 'line', from: from.point, to: to.point }] : undefined;
  }
  if (from.station === undefined) {
    return to.station && one(arcFrom(from.point, to.station));
  }
  if (to.station === undefined || carrier !== undefined) {
    return one(arcTo(from.station, to.point));
  }
  return twoArcs(from.station, to.station);
}

/** The node's number, or the first on the way to the other end that is surely past the corner. */
function surely({ number, isCorner }: Node, way: 1 | -1): number {
  return isCorner ? number + way * CORNER_DOUBT : number;
}

/**
 * Whether the points from one number to another lie within the tolerance of the
 * pieces. Of many points only some are looked at: the finished fit is measured
 * all round anyhow.
 */
function staysNear(
  ring: RingOfPoints,
  pieces: readonly (Arc | Line)[],
  from: number,
  to: number,
  tolerance: number,
): boolean {
  const isNear = (number: number) =>
    pieces.some((piece) => distanceToPiece(piece, ring.at(number)) <= tolerance);
  if (!isNear(Math.round((from + to) / 2))) {
    return false;
  }
  const stride = Math.max(Math.ceil((to - from) / MOST_LOOKED_AT), 1);
  for (let number = from; number <= to; number += stride) {
    if (!isNear(number)) {
      return false;
    }
  }
  return true;
}
