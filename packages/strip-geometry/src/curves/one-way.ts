import type { Segment } from '../outline.js';
import { lengthBetween } from './arc-length.js';
import { inflections } from './inflections.js';
import { parametric } from './parametric-curve.js';

/** Part of a segment. */
export interface Part {
  /** Parameters, from 0 to 1. */
  readonly from: number;
  readonly to: number;
  /** Millimetres along the segment. */
  readonly start: number;
  readonly end: number;
}

/**
 * Divides part of a segment at its inflections, so that each part bends one
 * way. An inflection nearer than `least` millimetres to another or to an end
 * divides nothing.
 */
export function oneWayParts(segment: Segment, whole: Part, least: number): Part[] {
  const parts: Part[] = [];
  let { from, start } = whole;
  const curve = parametric(segment);
  for (const parameter of inflections(segment)) {
    if (parameter > from && parameter < whole.to) {
      const end = start + lengthBetween(curve, from, parameter);
      if (end - start > least && whole.end - end > least) {
        parts.push({ from, to: parameter, start, end });
        [from, start] = [parameter, end];
      }
    }
  }
  return [...parts, { ...whole, from, start }];
}
