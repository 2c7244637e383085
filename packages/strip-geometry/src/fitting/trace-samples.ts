import type { Arc, Line, Outline, Point } from '../outline.js';
import { distance } from '../point.js';
import { lengthOf } from '../segment.js';
import { evenlySpaced } from './evenly-spaced.js';
import { distanceToPiece } from './tangent-arcs.js';

/** Points along a fit are at most this many times those along the trace. */
const MOST_TIMES = 2;

/** Points are taken this share of the tolerance apart. */
const SPACING = 1 / 12;

/** More than the rows of squares that two outlines of the same size can lie in. */
const ROW = 2 ** 26;

/** Points all along a trace, to tell whether a fit keeps within a tolerance of it. */
export class TraceSamples {
  readonly #points: readonly Point[];
  readonly #tolerance: number;
  readonly #spacing: number;
  /** Numbers of the points in each square, whose sides are as long as the tolerance. */
  readonly #squares = new Map<number, number[]>();

  /** @param most points at most, so that the work is bounded */
  constructor(outline: Outline, length: number, tolerance: number, most: number) {
    this.#tolerance = tolerance;
    this.#spacing = Math.max(tolerance * SPACING, length / most);
    this.#points = evenlySpaced(outline, this.#spacing);
    this.#points.forEach((point, number) => {
      const key = this.#squareOf(point);
      const square = this.#squares.get(key);
      if (square === undefined) {
        this.#squares.set(key, [number]);
      } else {
        square.push(number);
      }
    });
  }

  /**
   * Whether no point of either line is farther than the tolerance from the
   * other. Since a line may lie half a step farther off between two points,
   * points are held to the tolerance less half a step.
   */
  areNear(pieces: readonly (Arc | Line)[]): boolean {
    const limit = this.#tolerance - this.#spacing / 2;
    return limit > 0 && this.#keepTo(pieces, limit) && this.#areKeptTo(pieces, limit);
  }

  /** Whether every point of the trace is within the limit of a piece, most often of the last one. */
  #keepTo(pieces: readonly (Arc | Line)[], limit: number): boolean {
    const isNear = (at: number, point: Point) => {
      const piece = pieces[at % pieces.length];
      return piece !== undefined && distanceToPiece(piece, point) <= limit;
    };
    let at = 0;
    return this.#points.every((point) => {
      for (let tries = 0; tries < pieces.length; tries++) {
        if (isNear(at + tries, point)) {
          at = (at + tries) % pieces.length;
          return true;
        }
      }
      return false;
    });
  }

  /** Whether every point of the pieces is within the limit of the trace. */
  #areKeptTo(pieces: readonly (Arc | Line)[], limit: number): boolean {
    const length = pieces.reduce((sum, piece) => sum + lengthOf(piece), 0);
    const count = this.#points.length;
    if (!(length <= this.#spacing * count * MOST_TIMES)) {
      return false;
    }
    const isNear = (number: number, point: Point) => {
      const sample = this.#points[number % count];
      return sample !== undefined && distance(sample, point) <= limit;
    };
    let last = 0;
    return evenlySpaced({ name: '', segments: pieces }, this.#spacing).every((point) => {
      last = isNear(last + 1, point) ? last + 1 : this.#nearest(point);
      return isNear(last, point);
    });
  }

  /** The number of the point of the trace that is nearest, among those within the tolerance. */
  #nearest(point: Point): number {
    const key = this.#squareOf(point);
    let [nearest, least] = [0, Infinity];
    for (let across = -1; across <= 1; across++) {
      for (let up = -1; up <= 1; up++) {
        for (const number of this.#squares.get(key + across * ROW + up) ?? []) {
          const sample = this.#points[number];
          const away = sample === undefined ? Infinity : distance(sample, point);
          if (away < least) {
            [nearest, least] = [number, away];
          }
        }
      }
    }
    return nearest;
  }

  #squareOf({ x, y }: Point): number {
    return Math.floor(x / this.#tolerance) * ROW + Math.floor(y / this.#tolerance);
  }
}
