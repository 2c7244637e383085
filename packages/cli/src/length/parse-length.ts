import { accept, type Reading, refuse } from '../faults/reading.js';
import { MILLIMETRES, type Unit, unitSpelt } from './unit.js';

/** No sheet, strip or shear is longer; longer still would leave whole numbers of marks inexact. */
export const LONGEST_MILLIMETRES = 100_000;
const LONGEST_TEXT = '100 m';

// A number: 1 5/8 or 1-5/8, or 5/8, or 1.625 or .625; then whatever names the unit.
const MIXED = /^(\d+)(?:\s+|-)(\d+)\s*\/\s*(\d+)(.*)$/s;
const FRACTION = /^(\d+)\s*\/\s*(\d+)(.*)$/s;
const DECIMAL = /^(\d+(?:\.\d*)?|\.\d+)(.*)$/s;

/** A number as written, and the unit written after it, if any. */
interface WrittenLength {
  readonly value: number;
  readonly unit: Unit | undefined;
}

/**
 * Reads a length: `1 5/8`, `1-5/8`, `5/8`, `1.625`, `1.625 in`, `1 5/8"`,
 * `41.3 mm`, `4.13 cm`. A bare number is in `units`. Millimetres, at least 0.
 */
export function parseLength(text: string, units: Unit): Reading<number> {
  const written = parseWrittenLength(text);
  return written.ok ? inMillimetres(written.value, units) : written;
}

/** Like `parseLength`, and above 0. */
export function parsePositiveLength(text: string, units: Unit): Reading<number> {
  const length = parseLength(text, units);
  if (length.ok && length.value === 0) return refuse({ code: 'must be above zero' });
  return length;
}

export function inMillimetres(written: WrittenLength, units: Unit): Reading<number> {
  const length = written.value * MILLIMETRES[written.unit ?? units];
  if (!(length <= LONGEST_MILLIMETRES)) return refuse({ code: 'too large', limit: LONGEST_TEXT });
  return accept(length);
}

export function parseWrittenLength(text: string): Reading<WrittenLength> {
  const trimmed = text.trim();
  if (/^-\s*[\d.]/.test(trimmed)) return refuse({ code: 'must not be negative' });
  const mixed = MIXED.exec(trimmed);
  if (mixed !== null) {
    const [, whole, over, under, rest] = mixed;
    return withUnit(Number(whole), Number(over), Number(under), rest ?? '');
  }
  const fraction = FRACTION.exec(trimmed);
  if (fraction !== null) {
    const [, over, under, rest] = fraction;
    return withUnit(0, Number(over), Number(under), rest ?? '');
  }
  const decimal = DECIMAL.exec(trimmed);
  if (decimal !== null) return withUnit(Number(decimal[1]), 0, 1, decimal[2] ?? '');
  return refuse({ code: 'not a length' });
}

function withUnit(
  whole: number,
  over: number,
  under: number,
  rest: string,
): Reading<WrittenLength> {
  if (under === 0) return refuse({ code: 'zero denominator' });
  const value = whole + over / under;
  const word = rest.trim();
  if (word === '') return accept({ value, unit: undefined });
  const unit = unitSpelt(word);
  if (unit !== undefined) return accept({ value, unit });
  const lettersOnly = /^[\p{L}'\u2032]+$/u.test(word) && word.length <= 12;
  return refuse(lettersOnly ? { code: 'unknown unit', unit: word } : { code: 'not a length' });
}
