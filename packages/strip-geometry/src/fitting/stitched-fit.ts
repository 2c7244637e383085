import { FULL_TURN } from '../angle.js';
import type { Arc, Line, Point } from '../outline.js';
import { along, distance, minus } from '../point.js';
import { carrierOf, meetingNear } from './carrier.js';
import type { RoughPiece } from './fewest-pieces.js';
import type { RingOfPoints } from './ring-of-points.js';
import { type RunEnds, type Stretch, stitchedRun } from './stitched-run.js';

/** A tip that lies this share of the tolerance off the trace is put nearer. */
const BLUNT = 0.8;

/**
 * The points as lines and arcs, smooth but at `corners`: the lines and circles
 * that the rough pieces of the runs between corners lie on are stitched
 * together by pairs of arcs, in as few pieces as keep within `tolerance` of the
 * points. Undefined where no such stitches are found.
 *
 * @param runs see `roughRuns`
 */
export function stitchedFit(
  ring: RingOfPoints,
  corners: readonly number[],
  runs: readonly (readonly RoughPiece[])[],
  tolerance: number,
): readonly (Arc | Line)[] | undefined {
  const [first] = corners;
  if (first === undefined) {
    return stitchedLoop(ring, runs.flat(), tolerance);
  }
  const all = runs.map((run) => run.map((piece) => stretchOf(ring, piece)));
  const tips = all.map((stretches, index) => {
    const before = all[(index + all.length - 1) % all.length]?.at(-1);
    return tipOf(ring, corners[index] ?? 0, before, stretches[0], tolerance);
  });
  const pieces: (Arc | Line)[] = [];
  for (const [index, stretches] of all.entries()) {
    const [from, to] = [tips[index], tips[(index + 1) % tips.length]];
    const corner = corners[index] ?? first;
    const next = corners[index + 1] ?? first + ring.size;
    const run =
      from &&
      to &&
      stitchedRun(ring, stretches, endsOf(corner, from, next, to, stretches.length), tolerance);
    if (run === undefined) {
      return undefined;
    }
    pieces.push(...run);
  }
  return pieces;
}

function endsOf(corner: number, from: Point, next: number, to: Point, count: number): RunEnds {
  const free = { stretch: -1, isCorner: true, station: undefined };
  return {
    start: { ...free, number: corner, point: from },
    finish: { ...free, number: next, point: to, stretch: count },
  };
}

function stretchOf(ring: RingOfPoints, piece: RoughPiece): Stretch {
  return { carrier: carrierOf(ring, piece), first: piece.first, last: piece.last };
}

/** Where a corner is put: where the carriers meet if that is near enough, else on the trace. */
function tipOf(
  ring: RingOfPoints,
  corner: number,
  before: Stretch | undefined,
  after: Stretch | undefined,
  tolerance: number,
): Point {
  const here = ring.at(corner);
  const meeting = before && after && meetingNear(before.carrier, after.carrier, here);
  if (meeting === undefined) {
    return here;
  }
  const nearby = Array.from({ length: 7 }, (_, step) => ring.at(corner - 3 + step));
  const nearest = nearby.reduce((a, b) => (distance(b, meeting) < distance(a, meeting) ? b : a));
  const away = distance(nearest, meeting);
  // The points may pass the corner on either side, half a step from it.
  const limit = BLUNT * tolerance + distance(here, ring.at(corner + 1)) / 3;
  const blunted = along(nearest, minus(meeting, nearest), (BLUNT * tolerance) / away);
  return away <= limit ? meeting : blunted;
}

/** A loop without corners: cut in the middle of its longest stretch. */
function stitchedLoop(
  ring: RingOfPoints,
  rough: readonly RoughPiece[],
  tolerance: number,
): readonly (Arc | Line)[] | undefined {
  const [only] = rough;
  if (only === undefined) {
    return undefined;
  }
  if (rough.length === 1) {
    return wholeCircle(ring, only);
  }
  const longest = rough.reduce((a, b) => (b.last - b.first > a.last - a.first ? b : a));
  const middle = Math.round((longest.first + longest.last) / 2);
  const at = rough.indexOf(longest);
  const cut = stretchOf(ring, longest);
  const moved = rough.slice(0, at).map((piece) => {
    const { first, last } = piece;
    return { ...stretchOf(ring, piece), first: first + ring.size, last: last + ring.size };
  });
  const stretches = [
    { ...cut, first: middle },
    ...rough.slice(at + 1).map((piece) => stretchOf(ring, piece)),
    ...moved,
    { ...cut, first: longest.first + ring.size, last: middle + ring.size },
  ];
  const station = cut.carrier.nearest(ring.at(middle));
  const point = { x: station.x, y: station.y };
  const ends = {
    start: { number: middle, stretch: 0, point, isCorner: false, station },
    finish: {
      number: middle + ring.size,
      stretch: stretches.length - 1,
      point,
      isCorner: false,
      station,
    },
  };
  return stitchedRun(ring, stretches, ends, tolerance);
}

function wholeCircle(ring: RingOfPoints, piece: RoughPiece): readonly Arc[] | undefined {
  if (piece.kind !== 'arc') {
    return undefined;
  }
  const { x, y, heading } = carrierOf(ring, piece).nearest(ring.at(0));
  const radius = 1 / piece.curvature;
  const centre = { x: x - radius * Math.sin(heading), y: y + radius * Math.cos(heading) };
  const sweep = Math.sign(piece.curvature) * FULL_TURN;
  return [{ kind: 'arc', from: { x, y }, to: { x, y }, centre, sweep }];
}
