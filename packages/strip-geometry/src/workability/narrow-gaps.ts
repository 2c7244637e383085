import { toRadians } from '../angle.js';
import type { Outline, Point } from '../outline.js';
import { along, cross, distance, dot, leftOf, minus } from '../point.js';
import { headingAt, lengthOf, pointAt } from '../segment.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';
import { printLength, printPoint } from '../wording.js';
import type { CheckedLimits } from './limits.js';
import type { WorkabilityWarning } from './warning.js';

/** A place on the outline, and the way it runs there. */
interface Station {
  readonly at: Point;
  /** Unit vector. */
  readonly heading: Point;
}

/** The wall that a station faces across the inside or the outside. */
interface Facing {
  readonly station: number;
  readonly opposite: number;
  readonly to: Point;
  readonly width: number;
}

/** Stations a gap: near enough for the widths of straight walls to be exact and those of curves close. */
const STATIONS_A_GAP = 5;

/** Half the length of a piece, as a part of the limit, and a little more so that no ray slips through. */
const HALF_PIECE = 0.51 / STATIONS_A_GAP;

/** Walls that open by more degrees than this let go of dough, however near they are (common practice). */
const OPENING = 30;

/**
 * The places where two walls face each other nearer than the limit and run on
 * so for at least as long as they are apart: a thin neck or finger of the
 * cookie, or a slot between two parts of the cutter. One warning for each,
 * where it is narrowest. Looked for from stations along the outline, a fifth
 * of the limit apart, by a ray square to the wall.
 */
export function narrowGaps(
  outline: Outline,
  { narrowestGap }: CheckedLimits,
): WorkabilityWarning[] {
  if (narrowestGap === 0) {
    return [];
  }
  const stations = stationsOf(outline, narrowestGap / STATIONS_A_GAP);
  const grid = gridOf(stations, narrowestGap);
  return ([1, -1] as const).flatMap((side) => {
    const facings = stations.flatMap((_, station) => facingAt(stations, station, side, grid) ?? []);
    return gapsOf(facings, stations).map((gap) => warningOf(gap, stations, side, narrowestGap));
  });
}

function stationsOf({ segments }: Outline, spacing: number): Station[] {
  return segments.flatMap((segment) => {
    const length = lengthOf(segment);
    const count = Math.max(1, Math.ceil(length / spacing));
    // In the middle of each piece, so that none lies in a corner.
    return Array.from({ length: count }, (_, index): Station => {
      const reach = ((index + 0.5) * length) / count;
      return { at: pointAt(segment, reach), heading: headingAt(segment, reach) };
    });
  });
}

interface Grid {
  readonly size: number;
  readonly cells: ReadonlyMap<string, readonly number[]>;
}

/** The stations by the square of the plane that they lie in. */
function gridOf(stations: readonly Station[], size: number): Grid {
  const cells = new Map<string, number[]>();
  stations.forEach(({ at }, index) => {
    const key = `${Math.floor(at.x / size)} ${Math.floor(at.y / size)}`;
    const cell = cells.get(key);
    if (cell === undefined) {
      cells.set(key, [index]);
    } else {
      cell.push(index);
    }
  });
  return { size, cells };
}

/** The nearest wall that a ray to the left (side 1) or right (-1) of a station meets within the limit. */
function facingAt(
  stations: readonly Station[],
  station: number,
  side: 1 | -1,
  { size, cells }: Grid,
): Facing | undefined {
  const here = stations[station];
  if (here === undefined) {
    return undefined;
  }
  const left = leftOf(here.heading);
  const ray = { x: side * left.x, y: side * left.y };
  let nearest: Facing | undefined;
  const [column, row] = [Math.floor(here.at.x / size), Math.floor(here.at.y / size)];
  for (const key of neighbours(column, row)) {
    for (const opposite of cells.get(key) ?? []) {
      const there = stations[opposite];
      if (there === undefined || dot(here.heading, there.heading) > -Math.cos(toRadians(OPENING))) {
        continue;
      }
      // Where the ray meets the tangent of the other wall, if that is within its piece.
      const sine = cross(ray, there.heading);
      const between = minus(there.at, here.at);
      const width = cross(between, there.heading) / sine;
      const off = Math.abs(cross(between, ray) / sine);
      const isNearest = width > 0 && width < (nearest?.width ?? size - LENGTH_TOLERANCE);
      if (isNearest && off <= HALF_PIECE * size) {
        nearest = { station, opposite, width, to: along(here.at, ray, width) };
      }
    }
  }
  return nearest;
}

function neighbours(column: number, row: number): string[] {
  return [-1, 0, 1].flatMap((x) => [-1, 0, 1].map((y) => `${column + x} ${row + y}`));
}

/**
 * One facing for each gap: where it is narrowest. Left out are gaps that are
 * not as deep as they are wide, and those that end in a pointed corner, which is a fault by itself.
 */
function gapsOf(facings: readonly Facing[], stations: readonly Station[]): Facing[] {
  const groups: Facing[][] = [];
  // A station has one facing at most, so that those beside it are found by their stations.
  const found = new Map<number, { readonly facing: Facing; readonly group: Facing[] }>();
  const count = stations.length;
  for (const facing of facings) {
    const beside = [facing.station, facing.opposite]
      .flatMap((place) => [-2, -1, 0, 1, 2].map((off) => found.get((place + off + count) % count)))
      .find((other) => other !== undefined && isBeside(other.facing, facing, count));
    const group = beside?.group ?? [];
    if (beside === undefined) {
      groups.push(group);
    }
    group.push(facing);
    found.set(facing.station, { facing, group });
  }
  return groups.flatMap((group) => {
    const narrowest = group.reduce((best, one) => (one.width < best.width ? one : best));
    const middles = group.map(({ station, to }) => middleOf(stations[station]?.at ?? to, to));
    const [start] = middles;
    const depth = middles.reduce((most, p) => Math.max(most, distance(p, start ?? p)), 0);
    const isCorner = near(narrowest.station, narrowest.opposite, stations.length);
    return depth >= narrowest.width && !isCorner ? [narrowest] : [];
  });
}

function middleOf(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** Whether two facings are parts of one gap: the same walls, or seen from the other one. */
function isBeside(a: Facing, b: Facing, count: number): boolean {
  return (
    (near(a.station, b.station, count) && near(a.opposite, b.opposite, count)) ||
    (near(a.station, b.opposite, count) && near(a.opposite, b.station, count))
  );
}

/** Whether two stations are next to each other, or all but. */
function near(a: number, b: number, count: number): boolean {
  const apart = Math.abs(a - b);
  return Math.min(apart, count - apart) <= 2;
}

function warningOf(
  { station, to, width }: Facing,
  stations: readonly Station[],
  side: 1 | -1,
  limit: number,
): WorkabilityWarning {
  const from = stations[station]?.at ?? to;
  const what = side === 1 ? 'The cookie is only' : 'Two parts of the cutter are only';
  const rest = side === 1 ? 'wide' : 'apart';
  return {
    code: 'narrow gap',
    place: { on: 'outline', from, to },
    measured: width,
    limit,
    unit: 'mm',
    source: 'common practice',
    message:
      `${what} ${printLength(width)} ${rest} between ${printPoint(from)} and ${printPoint(to)}; ` +
      `dough sticks in gaps below ${printLength(limit)}. Widen it, or make the cutter larger.`,
  };
}
