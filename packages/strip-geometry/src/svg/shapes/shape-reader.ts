import type { DrawnPath } from '../drawn-path.js';
import { SvgError } from '../svg-error.js';
import type { SvgElement } from '../svg-tree.js';
import { readLength } from '../units.js';
import type { Viewport } from '../viewport.js';

/** A kind of element that draws: what it draws, in its own user units. One file each. */
export type ShapeReader = (element: SvgElement, viewport: Viewport) => readonly DrawnPath[];

/** What a percentage is taken of (SVG 1.1, 7.10). */
export type Direction = 'across' | 'down' | 'either';

/**
 * A length of the shape in user units, or undefined where it is not given.
 *
 * @throws SvgError `bad length`.
 */
export function optionalLength(
  { attributes, place }: SvgElement,
  name: string,
  direction: Direction,
  viewport: Viewport,
): number | undefined {
  const text = attributes.get(name);
  return text === undefined || text.trim() === 'auto'
    ? undefined
    : readLength(text, `"${name}"`, place, wholeOf(direction, viewport));
}

/** The same, 0 where it is not given. */
export function lengthOrZero(
  element: SvgElement,
  name: string,
  direction: Direction,
  viewport: Viewport,
): number {
  return optionalLength(element, name, direction, viewport) ?? 0;
}

/**
 * The same for a size, which may not be negative.
 *
 * @throws SvgError `bad length`.
 */
export function optionalSize(
  element: SvgElement,
  name: string,
  direction: Direction,
  viewport: Viewport,
): number | undefined {
  const size = optionalLength(element, name, direction, viewport);
  if (size !== undefined && size < 0) {
    const message = `"${name}" must be 0 or more; got ${size}.`;
    throw new SvgError('bad length', message, element.place);
  }
  return size;
}

function wholeOf(direction: Direction, { width, height }: Viewport): number | undefined {
  if (direction === 'across') {
    return width;
  }
  if (direction === 'down') {
    return height;
  }
  return width === undefined || height === undefined
    ? undefined
    : Math.hypot(width, height) / Math.SQRT2;
}
