import { LONGEST_NUMBER } from './limits.js';
import { quote, SvgError, type SvgPlace } from './svg-error.js';

/** CSS Values and Units, "absolute lengths": 96 px to the inch, and 25.4 mm. */
export const PIXELS_PER_INCH = 96;
export const MILLIMETRES_PER_INCH = 25.4;
export const MILLIMETRES_PER_PIXEL = MILLIMETRES_PER_INCH / PIXELS_PER_INCH;

/** How many of each unit make an inch (CSS Values and Units, "absolute lengths"). */
const UNITS_PER_INCH: Readonly<Record<string, number>> = {
  '': PIXELS_PER_INCH,
  px: PIXELS_PER_INCH,
  in: 1,
  mm: MILLIMETRES_PER_INCH,
  cm: MILLIMETRES_PER_INCH / 10,
  q: MILLIMETRES_PER_INCH * 4,
  pt: 72,
  pc: 6,
};

const LENGTH = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)([a-zA-Z]*|%)$/;

/**
 * A length in user units: a plain number, or one with px, in, mm, cm, Q, pt
 * or pc. A percentage is taken of `whole`, and refused where there is none.
 *
 * @throws SvgError `bad length`.
 */
export function readLength(
  text: string,
  what: string,
  place: SvgPlace,
  whole: number | undefined,
): number {
  const word = text.trim();
  const [, digits, unit = ''] = (word.length <= LONGEST_NUMBER && LENGTH.exec(word)) || [];
  const value = Number(digits);
  const perInch = UNITS_PER_INCH[unit.toLowerCase()];
  const size =
    unit === '%'
      ? whole === undefined
        ? Number.NaN
        : (value / 100) * whole
      : (value * PIXELS_PER_INCH) / (perInch ?? Number.NaN);
  if (!Number.isFinite(size)) {
    const last = whole === undefined ? ' or pc' : ', pc or %';
    const message =
      `${what} must be a number, alone or with px, in, mm, cm, Q, pt${last}; ` +
      `got ${quote(text)}.`;
    throw new SvgError('bad length', message, place);
  }
  return size;
}
