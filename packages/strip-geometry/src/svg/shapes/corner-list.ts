import type { DrawnPath } from '../drawn-path.js';
import { readPathData } from '../path-data.js';
import { quote, SvgError } from '../svg-error.js';
import type { SvgElement } from '../svg-tree.js';
import type { ShapeReader } from './shape-reader.js';

/** A `polygon`: straight sides, closed. */
export const readPolygon: ShapeReader = (element) => sides(element, 'Z');

/** A `polyline`: straight sides, closed only if it ends where it starts. */
export const readPolyline: ShapeReader = (element) => sides(element, '');

/** A list of corners reads like the points after a move in path data (SVG 1.1, 9.7.1 and 8.3.2). */
function sides({ attributes, place }: SvgElement, end: 'Z' | ''): readonly DrawnPath[] {
  const points = attributes.get('points')?.trim() ?? '';
  if (points === '') {
    return [];
  }
  if (/[a-df-z]/i.test(points)) {
    const message = `"points" must be numbers, two a corner; got ${quote(points)}.`;
    throw new SvgError('bad number', message, place);
  }
  return readPathData(`M${points}${end}`, place);
}
