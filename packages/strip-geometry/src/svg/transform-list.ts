import { toRadians } from '../angle.js';
import { LONGEST_NUMBER } from './limits.js';
import { composed, IDENTITY, type Matrix, scaling, translation } from './matrix.js';
import { quote, SvgError, type SvgPlace } from './svg-error.js';

const CALL = /([a-zA-Z]+)\s*\(([^()]*)\)/y;
const BETWEEN = /[\s,]*/y;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?(?:px|deg)?$/;
const MOST_CALLS = 1000;

/** Each function of a transform list, with the counts of numbers it takes (SVG 1.1, 7.6). */
const FUNCTIONS: Readonly<
  Record<string, { readonly counts: readonly number[]; map(n: readonly number[]): Matrix }>
> = {
  matrix: {
    counts: [6],
    map: ([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]) => ({ a, b, c, d, e, f }),
  },
  translate: { counts: [1, 2], map: ([x = 0, y = 0]) => translation(x, y) },
  scale: { counts: [1, 2], map: ([x = 1, y = x]) => scaling(x, y) },
  rotate: {
    counts: [1, 3],
    map: ([degrees = 0, x = 0, y = 0]) =>
      composed(composed(translation(x, y), rotation(degrees)), translation(-x, -y)),
  },
  skewX: { counts: [1], map: ([degrees = 0]) => ({ ...IDENTITY, c: slope(degrees) }) },
  skewY: { counts: [1], map: ([degrees = 0]) => ({ ...IDENTITY, b: slope(degrees) }) },
};

/**
 * The map that a `transform` stands for, the rightmost of its functions
 * applied first.
 *
 * @throws SvgError `bad transform`.
 */
export function readTransform(text: string, place: SvgPlace): Matrix {
  const refused = (found: string) =>
    new SvgError(
      'bad transform',
      `${found} in the transform ${quote(text)}; only matrix, translate, scale, rotate, skewX ` +
        'and skewY with plain numbers are read.',
      place,
    );
  let matrix = IDENTITY;
  let at = skip(BETWEEN, text, 0);
  if (text.trim() === 'none') {
    return matrix;
  }
  for (let calls = 0; at < text.length; calls++) {
    CALL.lastIndex = at;
    const [whole, name = '', inside = ''] = CALL.exec(text) ?? [];
    if (whole === undefined || calls >= MOST_CALLS) {
      throw refused(`There is ${quote(text.slice(at))}`);
    }
    const known = Object.hasOwn(FUNCTIONS, name) ? FUNCTIONS[name] : undefined;
    if (known === undefined) {
      throw refused(`There is ${quote(name)}`);
    }
    const words = inside
      .replace(/(?<=[\d.])(?=[+-])/g, ' ')
      .split(/[\s,]+/)
      .filter((word) => word !== '');
    const odd = words.find((word) => word.length > LONGEST_NUMBER || !NUMBER.test(word));
    if (odd !== undefined || !known.counts.includes(words.length)) {
      throw refused(`There is ${quote(whole)}`);
    }
    matrix = composed(matrix, known.map(words.map(Number.parseFloat)));
    at = skip(BETWEEN, text, at + whole.length);
  }
  if (Object.values(matrix).some((number) => !Number.isFinite(number))) {
    throw refused('Numbers grow beyond all bounds');
  }
  return matrix;
}

function skip(pattern: RegExp, text: string, from: number): number {
  pattern.lastIndex = from;
  pattern.exec(text);
  return Math.max(pattern.lastIndex, from);
}

/** Turns x towards y: clockwise as seen, since y points down in a drawing. */
function rotation(degrees: number): Matrix {
  const [cosine, sine] = [Math.cos(toRadians(degrees)), Math.sin(toRadians(degrees))];
  return { a: cosine, b: sine, c: -sine, d: cosine, e: 0, f: 0 };
}

function slope(degrees: number): number {
  return Math.tan(toRadians(degrees));
}
