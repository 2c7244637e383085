import { type DrawnPath, mapPiece } from './drawn-path.js';
import { MOST_CHARACTERS, MOST_DEPTH, MOST_ELEMENTS, MOST_PIECES } from './limits.js';
import { composed, type Matrix, translation } from './matrix.js';
import { lengthOrZero } from './shapes/shape-reader.js';
import { shapes } from './shapes/shapes.js';
import { propertyOf } from './style.js';
import { quote, SvgError, type SvgPlace } from './svg-error.js';
import type { SvgElement } from './svg-tree.js';
import { readTransform } from './transform-list.js';
import { readViewport, type Viewport } from './viewport.js';

/** What in a drawing may be passed over, if asked to, where it is otherwise refused. */
export type Ignorable = 'text' | 'images' | 'open paths';

/** What one element of the file draws. */
export interface DrawnShape {
  readonly place: SvgPlace;
  /** Its id, or that of the `use` it is drawn by. */
  readonly id: string | undefined;
  /** In millimetres from the lower left of the page, y up. */
  readonly paths: readonly DrawnPath[];
}

interface Surroundings {
  readonly matrix: Matrix;
  readonly visible: boolean;
  /** The elements that are being drawn by a `use`, outermost first. */
  readonly uses: readonly SvgElement[];
  readonly usedAs: string | undefined;
  readonly depth: number;
}

const GROUPS: ReadonlySet<string> = new Set(['svg', 'g', 'a', 'switch', 'symbol']);

/**
 * Everything a file draws, in order, with its transforms carried out, hidden
 * elements left out and each `use` followed.
 *
 * @throws SvgError at the first element that cannot be cut.
 */
export function drawnShapes(root: SvgElement, ignore: readonly Ignorable[]): readonly DrawnShape[] {
  const viewport = readViewport(root);
  const byId = elementsById(root);
  const found: DrawnShape[] = [];
  let visited = 0;
  let size = 0;
  let pieces = 0;

  const visit = (element: SvgElement, around: Surroundings): void => {
    const { name, place } = element;
    visited += 1;
    size += element.size;
    if (visited > MOST_ELEMENTS || around.depth > MOST_DEPTH || size > MOST_CHARACTERS) {
      const message =
        'With every "use" followed the drawing is larger than ' +
        `${MOST_ELEMENTS} elements, ${MOST_DEPTH} within one another; simplify it.`;
      throw new SvgError('too large', message, place);
    }
    const reader = shapes.get(name);
    const isUnreadable = name === 'text' || name === 'image';
    const isDrawn = reader !== undefined || GROUPS.has(name) || name === 'use' || isUnreadable;
    if (!isDrawn || propertyOf(element, 'display') === 'none') {
      return;
    }
    const inside = enter(element, around);
    if (GROUPS.has(name)) {
      refuseOwnPage(element, root);
      for (const child of element.children) {
        if (child.name !== 'symbol') {
          visit(child, inside);
        }
      }
    } else if (name === 'use') {
      visit(...followUse(element, inside, byId, viewport));
    } else if (inside.visible && isUnreadable) {
      refuseUnreadable(element, ignore);
    } else if (inside.visible && reader !== undefined) {
      refuseFlattened(element, inside.matrix);
      const paths = reader(element, viewport).map((path) => ({
        ...path,
        pieces: path.pieces.map((piece) => mapPiece(piece, inside.matrix)),
      }));
      pieces += paths.reduce((sum, path) => sum + path.pieces.length, 0);
      if (pieces > MOST_PIECES) {
        const message = `The drawing has more than ${MOST_PIECES} lines and curves; simplify it.`;
        throw new SvgError('too large', message, place);
      }
      found.push({ place, id: around.usedAs ?? place.id, paths });
    }
  };
  visit(root, {
    matrix: viewport.toPage,
    visible: true,
    uses: [],
    usedAs: undefined,
    depth: 0,
  });
  return found;
}

/** What surrounds the contents of an element, given what surrounds the element. */
function enter(element: SvgElement, around: Surroundings): Surroundings {
  const { place } = element;
  for (const property of ['clip-path', 'mask']) {
    if ((propertyOf(element, property) ?? 'none') !== 'none') {
      const message =
        `"${property}" cuts off part of what is drawn, which is not read; release it in the ` +
        'drawing program, and cut the paths themselves.';
      throw new SvgError('not supported', message, place);
    }
  }
  const transform = propertyOf(element, 'transform');
  const visibility = propertyOf(element, 'visibility') ?? 'inherit';
  return {
    ...around,
    matrix:
      transform === undefined
        ? around.matrix
        : composed(around.matrix, readTransform(transform, place)),
    visible: visibility === 'inherit' ? around.visible : visibility === 'visible',
    depth: around.depth + 1,
  };
}

function followUse(
  element: SvgElement,
  inside: Surroundings,
  byId: ReadonlyMap<string, SvgElement>,
  viewport: Viewport,
): [SvgElement, Surroundings] {
  const { attributes, place } = element;
  const reference = attributes.get('href')?.trim() ?? '';
  const target = reference.startsWith('#') ? byId.get(reference.slice(1)) : undefined;
  if (target === undefined) {
    const message =
      `"href" must be # and the id of an element of this file; got ${quote(reference)}. ` +
      'Nothing outside the file is read.';
    throw new SvgError('bad reference', message, place);
  }
  if (inside.uses.includes(element)) {
    const message = `It draws itself by way of ${quote(reference)}; take it out of what it uses.`;
    throw new SvgError('bad reference', message, place);
  }
  const offset = translation(
    lengthOrZero(element, 'x', 'across', viewport),
    lengthOrZero(element, 'y', 'down', viewport),
  );
  const around = {
    ...inside,
    matrix: composed(inside.matrix, offset),
    uses: [...inside.uses, element],
    usedAs: inside.usedAs ?? place.id,
  };
  return [target, around];
}

/** Refuses what has a page of its own: an `svg` in an `svg`, a symbol with a view box. */
function refuseOwnPage({ name, attributes, place }: SvgElement, root: SvgElement): void {
  const nested = name === 'svg' && place !== root.place;
  if (nested || (name === 'symbol' && attributes.has('viewBox'))) {
    const message =
      `${nested ? 'A drawing within a drawing' : 'A symbol with a view box'} is not read; ` +
      'ungroup it in the drawing program.';
    throw new SvgError('not supported', message, place);
  }
}

function refuseUnreadable({ name, place }: SvgElement, ignore: readonly Ignorable[]): void {
  if (name === 'text' && !ignore.includes('text')) {
    const message =
      'Text has no outline of its own; turn it into paths in the drawing program, or remove it.';
    throw new SvgError('text', message, place);
  }
  if (name === 'image' && !ignore.includes('images')) {
    const message =
      'An image has no outline; trace it into paths in the drawing program, or remove it.';
    throw new SvgError('image', message, place);
  }
}

/** Below this share of their product, the two sides of a mapped square lie on one line. */
const FLAT = 1e-9;

function refuseFlattened({ place }: SvgElement, { a, b, c, d }: Matrix): void {
  const area = Math.abs(a * d - b * c);
  if (!(area > FLAT * Math.hypot(a, b) * Math.hypot(c, d))) {
    const message =
      'Its transforms flatten it to a line; remove a scale of 0, or a skew of 90 degrees.';
    throw new SvgError('bad transform', message, place);
  }
}

/** The first element with each id. */
function elementsById(root: SvgElement): ReadonlyMap<string, SvgElement> {
  const byId = new Map<string, SvgElement>();
  const gather = (element: SvgElement) => {
    const { id } = element.place;
    if (id !== undefined && !byId.has(id)) {
      byId.set(id, element);
    }
    element.children.forEach(gather);
  };
  gather(root);
  return byId;
}
