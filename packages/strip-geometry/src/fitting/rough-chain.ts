import { fewestPieces, type RoughPiece } from './fewest-pieces.js';
import type { PlacedChain } from './refine-chain.js';
import type { RingOfPoints } from './ring-of-points.js';
import type { Chain, Link } from './smooth-chain.js';

/** Fits of more links than this are not tried. */
const MOST_LINKS = 48;

/** Points on either side of a corner that may belong to the other side. */
const CORNER_DOUBT = 2;

/**
 * A chain that nearly fits, to be refined: the rough pieces of the runs between
 * corners laid end to end. Undefined where there would be too many.
 *
 * @param runs see `roughRuns`
 */
export function roughChain(
  ring: RingOfPoints,
  corners: readonly number[],
  runs: readonly (readonly RoughPiece[])[],
): PlacedChain | undefined {
  const pieces = runs.flat();
  const ends = new Set(corners.length > 0 ? runs.map((run) => run.at(-1)) : []);
  const [first] = pieces;
  if (first === undefined || pieces.length > MOST_LINKS) {
    return undefined;
  }
  const links = pieces.map((piece, index): Link => {
    const next = pieces[(index + 1) % pieces.length] ?? first;
    const length = lengthOfStretch(ring, piece);
    const end = piece.heading + piece.curvature * length;
    const corner = ends.has(piece);
    const turn = corner
      ? Math.atan2(Math.sin(next.heading - end), Math.cos(next.heading - end))
      : 0;
    return { kind: piece.kind, length, curvature: piece.curvature, corner, turn };
  });
  const chain: Chain = { start: ring.at(first.first), heading: first.heading, links };
  return { chain, firsts: pieces.map((piece) => piece.first) };
}

function lengthOfStretch(ring: RingOfPoints, { kind, first, last, curvature }: RoughPiece): number {
  const chord = (from: number, to: number) => {
    const [a, b] = [ring.at(from), ring.at(to)];
    return Math.hypot(b.x - a.x, b.y - a.y);
  };
  if (kind === 'line') {
    return chord(first, last);
  }
  // Chords of ten points each: short enough for an arc, long enough that noise adds nothing.
  let length = 0;
  for (let from = first; from < last; from += 10) {
    const size = chord(from, Math.min(from + 10, last));
    const half = (Math.abs(curvature) * size) / 2;
    length += half < 1 ? (2 * Math.asin(half)) / Math.abs(curvature) : size;
  }
  return length;
}

/**
 * The runs between corners, each in its fewest pieces within `tolerance`; one
 * run all round where there is no corner.
 */
export function roughRuns(
  ring: RingOfPoints,
  corners: readonly number[],
  tolerance: number,
): readonly (readonly RoughPiece[])[] {
  const [first] = corners;
  if (first !== undefined) {
    return corners.map((corner, index) => {
      const next = corners[index + 1] ?? first + ring.size;
      const trim = next - corner > 6 * CORNER_DOUBT ? CORNER_DOUBT : 0;
      return fewestPieces(ring, corner + trim, next - trim, tolerance);
    });
  }
  // Once to find a good place to start, and again from there.
  const trial = fewestPieces(ring, 0, ring.size, tolerance);
  const start = trial.length > 1 ? (trial[0]?.last ?? 0) : 0;
  return [start === 0 ? trial : fewestPieces(ring, start, start + ring.size, tolerance)];
}
