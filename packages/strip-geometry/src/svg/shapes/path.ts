import { readPathData } from '../path-data.js';
import type { ShapeReader } from './shape-reader.js';

/** A `path`: whatever its data draws. */
export const readPath: ShapeReader = ({ attributes, place }) =>
  readPathData(attributes.get('d') ?? '', place);
