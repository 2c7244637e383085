import type {
  OutlineSizes,
  Point,
  SizeField,
  SizeKind,
  SizeValue,
} from '@stripwright/strip-geometry';
import type { Complaint } from '../faults/fault.js';
import { accept, type Reading, refuse } from '../faults/reading.js';
import { parseLength, parsePositiveLength } from '../length/parse-length.js';
import type { Unit } from '../length/unit.js';
import { readAngle, readCount, readNumber, readText } from './fields.js';

/** More sides, tips or corners than anyone bends by hand. */
const MOST_CORNERS = 500;

/** Reads one size of an outline from its text, by its kind. Corners have a reader of their own. */
export function readSizeText(
  kind: Exclude<SizeKind, 'corners'>,
  text: string,
  units: Unit,
): Reading<number | string> {
  switch (kind) {
    case 'length':
      return parsePositiveLength(text, units);
    case 'count':
      return readCount(text, 1, MOST_CORNERS);
    case 'angle':
      return readAngle(text);
    case 'ratio':
      return readNumber(text);
    case 'letter':
      // Which letters there are is for the family to say.
      return readText(text);
  }
}

/** What a size of a kind must be, where it is no text at all. */
export function wantedOf(kind: SizeKind): Complaint {
  switch (kind) {
    case 'length':
      return { code: 'not a length' };
    case 'count':
      return { code: 'not a whole number', least: 1 };
    case 'corners':
      return { code: 'not corners' };
    case 'letter':
      return { code: 'not text' };
    default:
      return { code: 'not a number' };
  }
}

/** Reads `[[0, 0], [3, 0], ...]`: pairs of lengths, which may be negative. */
export function readCorners(raw: unknown, units: Unit): Reading<readonly Point[]> {
  if (!Array.isArray(raw) || raw.length < 3) return refuse({ code: 'not corners' });
  if (raw.length > MOST_CORNERS) {
    return refuse({ code: 'too large', limit: `${MOST_CORNERS} corners` });
  }
  const corners: Point[] = [];
  for (const pair of raw) {
    if (!Array.isArray(pair) || pair.length !== 2) return refuse({ code: 'not corners' });
    const x = readSignedLength(pair[0], units);
    const y = readSignedLength(pair[1], units);
    if (!x.ok) return x;
    if (!y.ok) return y;
    corners.push({ x: x.value, y: y.value });
  }
  return accept(corners);
}

/** Reads `0, 0; 3, 0; 3, 2`, the way corners are given on the command line. */
export function readCornersText(text: string, units: Unit): Reading<readonly Point[]> {
  const pairs = text.split(';').filter((pair) => pair.trim() !== '');
  return readCorners(
    pairs.map((pair) => pair.split(',')),
    units,
  );
}

function readSignedLength(raw: unknown, units: Unit): Reading<number> {
  if (typeof raw !== 'string') return refuse({ code: 'not corners' });
  const sign = /^\s*-/.test(raw) ? -1 : 1;
  const length = parseLength(raw.replace(/^\s*[-+]/, ''), units);
  return length.ok ? accept(length.value === 0 ? 0 : sign * length.value) : length;
}

/** Only the sizes that were given, by the names that the family knows. */
export function givenSizes(
  sizes: readonly SizeField[],
  values: Readonly<Record<string, unknown>>,
): OutlineSizes {
  const given: Record<string, SizeValue> = {};
  for (const { name } of sizes) {
    const value = values[name];
    if (value !== undefined) given[name] = value as SizeValue;
  }
  return given;
}
