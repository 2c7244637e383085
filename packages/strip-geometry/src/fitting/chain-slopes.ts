import type { Point } from '../outline.js';
import { type Chain, endOf, type Link, type Station, stations } from './smooth-chain.js';

/** The numbers that describe a chain, in one row: what the fit may change. */
export interface Unknowns {
  readonly count: number;
  /** For each link, where in the row its length, curvature and turn stand; -1 for none. */
  readonly links: readonly {
    readonly length: number;
    readonly curvature: number;
    readonly turn: number;
  }[];
}

/** The start is 0 and 1, the first direction 2. */
export function unknownsOf({ links }: Chain): Unknowns {
  let count = 3;
  const places = links.map(({ kind, corner }) => ({
    length: count++,
    curvature: kind === 'arc' ? count++ : -1,
    turn: corner ? count++ : -1,
  }));
  return { count, links: places };
}

/** The chain with each unknown changed by the step that stands in its place. */
export function stepped(chain: Chain, unknowns: Unknowns, step: Float64Array): Chain {
  const by = (place: number) => (place < 0 ? 0 : (step[place] ?? 0));
  return {
    start: { x: chain.start.x + by(0), y: chain.start.y + by(1) },
    heading: chain.heading + by(2),
    links: chain.links.map((link, index) => {
      const place = unknowns.links[index] ?? { length: -1, curvature: -1, turn: -1 };
      return {
        ...link,
        length: link.length + by(place.length),
        curvature: link.curvature + by(place.curvature),
        turn: link.turn + by(place.turn),
      };
    }),
  };
}

/** A place on the chain, with the change of its coordinates and heading with each unknown. */
export interface Slopes {
  readonly station: Station;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly heading: Float64Array;
}

/** What `stations` gives, with slopes. */
export function slopesOf(chain: Chain, unknowns: Unknowns): readonly Slopes[] {
  const { count } = unknowns;
  const places = stations(chain);
  const row = (place: number) => {
    const values = new Float64Array(count);
    values[place] = 1;
    return values;
  };
  const all: Slopes[] = [];
  let [x, y, heading] = [row(0), row(1), row(2)];
  places.forEach((station, index) => {
    all.push({ station, x, y, heading });
    const link = chain.links[index];
    const place = unknowns.links[index];
    if (link === undefined || place === undefined) {
      return;
    }
    const end = endOf(station, link);
    const [across, up] = [end.x - station.x, end.y - station.y];
    const bent = bendSlope(station, link, end);
    [x, y, heading] = [x.slice(), y.slice(), heading.slice()];
    for (let unknown = 0; unknown < count; unknown++) {
      const turned = heading[unknown] ?? 0;
      x[unknown] = (x[unknown] ?? 0) - up * turned;
      y[unknown] = (y[unknown] ?? 0) + across * turned;
    }
    const add = (values: Float64Array, unknown: number, by: number) => {
      if (unknown >= 0) {
        values[unknown] = (values[unknown] ?? 0) + by;
      }
    };
    add(x, place.length, Math.cos(end.heading));
    add(y, place.length, Math.sin(end.heading));
    add(heading, place.length, link.curvature);
    add(x, place.curvature, bent.x);
    add(y, place.curvature, bent.y);
    add(heading, place.curvature, link.length);
    add(heading, place.turn, 1);
  });
  return all;
}

/** Below this turn, in radians, the slopes are reckoned by their series. */
const NEARLY_STRAIGHT = 1e-3;

/** How the end of a link moves with its curvature: the integral of u times the left normal. */
function bendSlope(start: Station, { length, curvature }: Link, end: Station): Point {
  if (Math.abs(curvature * length) < NEARLY_STRAIGHT) {
    const angle = start.heading + (2 / 3) * curvature * length;
    const size = (length * length) / 2;
    return { x: -size * Math.sin(angle), y: size * Math.cos(angle) };
  }
  return {
    x: (length * Math.cos(end.heading) - (end.x - start.x)) / curvature,
    y: (length * Math.sin(end.heading) - (end.y - start.y)) / curvature,
  };
}

/** How far a point lies to the left of a link carried on without end. */
export interface Offset {
  readonly distance: number;
  /** Its change with the x, y and heading of the link's start, and with its curvature. */
  readonly slopes: readonly [number, number, number, number];
}

/** See `Offset`. The form chosen is exact for circles and good for straight lines too. */
export function offsetFrom(start: Station, curvature: number, point: Point): Offset {
  const [cosine, sine] = [Math.cos(start.heading), Math.sin(start.heading)];
  const reach = { x: point.x - start.x, y: point.y - start.y };
  const ahead = reach.x * cosine + reach.y * sine;
  const beside = reach.y * cosine - reach.x * sine;
  const square = ahead * ahead + beside * beside;
  const lift = 2 * beside - curvature * square;
  // The distance to the centre of the circle, in radii.
  const radii = Math.max(Math.sqrt(Math.max(1 - curvature * lift, 0)), 1e-9);
  const distance = lift / (1 + radii);
  const normal = {
    x: (-sine - curvature * reach.x) / radii,
    y: (cosine - curvature * reach.y) / radii,
  };
  const bend =
    Math.abs(curvature) * Math.sqrt(square) < NEARLY_STRAIGHT
      ? -(ahead * ahead) / 2
      : ((beside - curvature * square) / radii - distance) / curvature;
  return { distance, slopes: [-normal.x, -normal.y, -ahead / radii, bend] };
}
