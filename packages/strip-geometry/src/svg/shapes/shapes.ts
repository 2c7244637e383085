import { readPolygon, readPolyline } from './corner-list.js';
import { readCircle, readEllipse } from './ellipse.js';
import { readLine } from './line.js';
import { readPath } from './path.js';
import { readRect } from './rect.js';
import type { ShapeReader } from './shape-reader.js';

/** Every element that draws, by its name. */
export const shapes: ReadonlyMap<string, ShapeReader> = new Map([
  ['path', readPath],
  ['polygon', readPolygon],
  ['polyline', readPolyline],
  ['line', readLine],
  ['rect', readRect],
  ['circle', readCircle],
  ['ellipse', readEllipse],
]);
