import { LONGEST_NUMBER } from './limits.js';
import { composed, type Matrix, scaling, translation } from './matrix.js';
import { quote, SvgError, type SvgPlace } from './svg-error.js';
import type { SvgElement } from './svg-tree.js';
import { MILLIMETRES_PER_PIXEL, readLength } from './units.js';

/** The page that a drawing is on. */
export interface Viewport {
  /** From user units, y down, to millimetres from the lower left of the page, y up. */
  readonly toPage: Matrix;
  /** What a percentage across is taken of, in user units. */
  readonly width: number | undefined;
  /** What a percentage of height is taken of, in user units. */
  readonly height: number | undefined;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The real size of a drawing, from `width`, `height`, `viewBox` and
 * `preserveAspectRatio` of its outermost element (SVG 1.1, 7.7 to 7.9). A size
 * that is missing, or a percentage, is taken as the view box has it, a user
 * unit as one px.
 *
 * @throws SvgError `bad length`, `bad number`, `not supported`.
 */
export function readViewport(root: SvgElement): Viewport {
  const box = readViewBox(root);
  const stated = { width: readSize(root, 'width'), height: readSize(root, 'height') };
  const shape = box === undefined ? undefined : box.height / box.width;
  const width =
    stated.width ??
    (stated.height !== undefined && shape !== undefined ? stated.height / shape : box?.width);
  const height =
    stated.height ??
    (stated.width !== undefined && shape !== undefined ? stated.width * shape : box?.height);
  const inView =
    box === undefined || width === undefined || height === undefined
      ? scaling(1, 1)
      : fitBox(box, width, height, root);
  const flipped = composed(
    translation(0, (height ?? 0) * MILLIMETRES_PER_PIXEL),
    scaling(MILLIMETRES_PER_PIXEL, -MILLIMETRES_PER_PIXEL),
  );
  return {
    toPage: composed(flipped, inView),
    width: box?.width ?? width,
    height: box?.height ?? height,
  };
}

/** In px, or undefined where the file leaves it to the window it is shown in. */
function readSize({ attributes, place }: SvgElement, name: string): number | undefined {
  const text = attributes.get(name)?.trim();
  if (text === undefined || text === 'auto' || text.endsWith('%')) {
    return undefined;
  }
  const size = readLength(text, `The ${name} of the drawing`, place, undefined);
  if (size <= 0) {
    const message = `The ${name} of the drawing must be above 0; got ${quote(text)}.`;
    throw new SvgError('bad length', message, place);
  }
  return size;
}

function readViewBox({ attributes, place }: SvgElement): Box | undefined {
  const text = attributes.get('viewBox');
  if (text === undefined) {
    return undefined;
  }
  const words = text.split(/[\s,]+/).filter((word) => word !== '');
  const [x, y, width, height] = words.map((word) =>
    word.length <= LONGEST_NUMBER ? Number(word) : Number.NaN,
  );
  const sound =
    words.length === 4 &&
    [x, y, width, height].every(Number.isFinite) &&
    (width ?? 0) > 0 &&
    (height ?? 0) > 0;
  if (!sound || x === undefined || y === undefined || !width || !height) {
    const message =
      'The viewBox must be four numbers, left, top, width and height, the last two above 0; ' +
      `got ${quote(text)}.`;
    throw new SvgError('bad number', message, place);
  }
  return { x, y, width, height };
}

const ALIGNMENT = /^x(Min|Mid|Max)Y(Min|Mid|Max)$/;
const SHARE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/** The map from the view box to the viewport, both in px (SVG 1.1, 7.8). */
function fitBox(box: Box, width: number, height: number, { attributes, place }: SvgElement) {
  const across = width / box.width;
  const down = height / box.height;
  const text = attributes.get('preserveAspectRatio') ?? 'xMidYMid';
  const [align = 'xMidYMid', fit = 'meet', ...rest] = text
    .split(/\s+/)
    .filter((word) => word !== '' && word !== 'defer');
  const toOrigin = translation(-box.x, -box.y);
  if (align === 'none') {
    return composed(scaling(across, down), toOrigin);
  }
  const [, alignX = '', alignY = ''] = ALIGNMENT.exec(align) ?? [];
  if (alignX === '' || rest.length > 0 || (fit !== 'meet' && fit !== 'slice')) {
    throw refuseAlignment(text, place);
  }
  const scale = fit === 'meet' ? Math.min(across, down) : Math.max(across, down);
  const spareX = (width - box.width * scale) * (SHARE[alignX] ?? 0);
  const spareY = (height - box.height * scale) * (SHARE[alignY] ?? 0);
  return composed(composed(translation(spareX, spareY), scaling(scale, scale)), toOrigin);
}

function refuseAlignment(text: string, place: SvgPlace): SvgError {
  const message =
    `preserveAspectRatio must be none, or such as xMidYMid with meet or slice; ` +
    `got ${quote(text)}.`;
  return new SvgError('not supported', message, place);
}
