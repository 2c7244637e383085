import type { Point } from '../outline.js';
import { type Matrix, mapPoint, mapVector } from './matrix.js';

/**
 * A piece of a drawn path. An arc is a part of an ellipse: `centre` + `u` cos
 * t + `v` sin t, t from `start` to `start + sweep`, where `u` and `v` are any
 * two conjugate half-diameters. So an affine map only has to map points and
 * vectors, and every kind of piece stays what it is.
 */
export type Piece =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'quadratic';
      readonly from: Point;
      readonly control: Point;
      readonly to: Point;
    }
  | {
      readonly kind: 'cubic';
      readonly from: Point;
      readonly control1: Point;
      readonly control2: Point;
      readonly to: Point;
    }
  | {
      readonly kind: 'ellipse';
      readonly from: Point;
      readonly to: Point;
      readonly centre: Point;
      readonly u: Point;
      readonly v: Point;
      readonly start: number;
      readonly sweep: number;
    };

/** A stretch drawn without lifting the pen. */
export interface DrawnPath {
  readonly pieces: readonly Piece[];
  /** Whether the file says it is closed (by a Z, or as a polygon is). */
  readonly closed: boolean;
}

/** The piece under an affine map. */
export function mapPiece(piece: Piece, matrix: Matrix): Piece {
  const ends = { from: mapPoint(matrix, piece.from), to: mapPoint(matrix, piece.to) };
  switch (piece.kind) {
    case 'line':
      return { ...piece, ...ends };
    case 'quadratic':
      return { ...piece, ...ends, control: mapPoint(matrix, piece.control) };
    case 'cubic':
      return {
        ...piece,
        ...ends,
        control1: mapPoint(matrix, piece.control1),
        control2: mapPoint(matrix, piece.control2),
      };
    case 'ellipse':
      return {
        ...piece,
        ...ends,
        centre: mapPoint(matrix, piece.centre),
        u: mapVector(matrix, piece.u),
        v: mapVector(matrix, piece.v),
      };
  }
}
