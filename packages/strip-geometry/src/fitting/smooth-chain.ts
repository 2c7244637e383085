import type { Arc, Line, Point } from '../outline.js';
import { LENGTH_TOLERANCE } from '../tolerance.js';

/** A line or arc of a chain. */
export interface Link {
  readonly kind: 'line' | 'arc';
  /** Millimetres along it. */
  readonly length: number;
  /** Radians a millimetre, positive to the left; 0 for a line. */
  readonly curvature: number;
  /** Whether the direction breaks at its end. */
  readonly corner: boolean;
  /** Radians by which it does, positive to the left; 0 where it does not. */
  readonly turn: number;
}

/**
 * Lines and arcs laid end to end, each in the direction in which the one
 * before ends unless there is a corner between. So it is smooth by the way it
 * is described.
 */
export interface Chain {
  readonly start: Point;
  /** Radians. */
  readonly heading: number;
  readonly links: readonly Link[];
}

/** A place on a chain. */
export interface Station {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** Below this turn, in radians, an arc is reckoned by its series. */
const NEARLY_STRAIGHT = 1e-6;

/** Where a link leads to, before any corner at its end. */
export function endOf(start: Station, { length, curvature }: Link): Station {
  const half = (curvature * length) / 2;
  const chord = Math.abs(half) < NEARLY_STRAIGHT ? length : (length * Math.sin(half)) / half;
  return {
    x: start.x + chord * Math.cos(start.heading + half),
    y: start.y + chord * Math.sin(start.heading + half),
    heading: start.heading + 2 * half,
  };
}

/** Where each link starts, and last where the chain ends, after the corner there. */
export function stations({ start, heading, links }: Chain): readonly Station[] {
  const all: Station[] = [{ ...start, heading }];
  let here: Station = { ...start, heading };
  for (const link of links) {
    const end = endOf(here, link);
    here = { ...end, heading: end.heading + link.turn };
    all.push(here);
  }
  return all;
}

/** The chain as a closed path. Its end must lie at its start but for rounding. */
export function segmentsOf(chain: Chain): readonly (Arc | Line)[] {
  const places = stations(chain);
  return chain.links.map((link, index): Arc | Line => {
    const from = places[index] ?? { ...chain.start, heading: 0 };
    const to = index === chain.links.length - 1 ? chain.start : (places[index + 1] ?? chain.start);
    const ends = { from: { x: from.x, y: from.y }, to: { x: to.x, y: to.y } };
    const bulge = (Math.abs(link.curvature) * link.length ** 2) / 8;
    if (link.kind === 'line' || bulge < LENGTH_TOLERANCE / 10) {
      return { kind: 'line', ...ends };
    }
    const radius = 1 / link.curvature;
    const centre = {
      x: from.x - radius * Math.sin(from.heading),
      y: from.y + radius * Math.cos(from.heading),
    };
    return { kind: 'arc', ...ends, centre, sweep: link.length * link.curvature };
  });
}
