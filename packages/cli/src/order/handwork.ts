import type {
  HemStage,
  NotchOptions,
  SplitOptions,
  WorkabilityLimits,
} from '@stripwright/strip-geometry';
import { accept, type Reading, refuse } from '../faults/reading.js';
import { parseLength } from '../length/parse-length.js';
import type { Unit } from '../length/unit.js';
import { readAngle, readChoice, readNumber } from './fields.js';

/**
 * How the hem is cut and bent, and what hands, tools and metal can do. What is
 * left out is for the geometry to fill in. Millimetres and degrees.
 */
export interface Handwork
  extends NotchOptions,
    SplitOptions,
    Omit<WorkabilityLimits, 'hemStage' | 'smallestMark'> {}

/** How far the hem is folded while the strip is bent. */
export const HEM_STAGES: readonly HemStage[] = ['closed', 'square'];

type NumberKey = Exclude<keyof Handwork, 'hemStage'>;

/** A number of the handwork, as an order names it. */
export interface HandworkNumber {
  readonly name: string;
  readonly key: NumberKey;
  readonly kind: 'length' | 'degrees' | 'number';
  /** For help texts, with what is usual. */
  readonly meaning: string;
  readonly most?: number;
  readonly aboveZero?: true;
}

export const HANDWORK_NUMBERS: readonly HandworkNumber[] = [
  {
    name: 'notch angle',
    key: 'halfAngle',
    kind: 'degrees',
    meaning: 'degrees that notches open to each side, 0 for slits (usually 45)',
    most: 89,
  },
  {
    name: 'snip below',
    key: 'snipRadius',
    kind: 'length',
    meaning: 'curves of a smaller radius get relief snips, 0 for none',
  },
  {
    name: 'hem strain',
    key: 'allowedStrain',
    kind: 'number',
    meaning: 'part of its length that a hem may stretch or crush by unsnipped (usually 0.2)',
    most: 1,
    aboveZero: true,
  },
  {
    name: 'shortest flat',
    key: 'shortestFlat',
    kind: 'length',
    meaning: 'the shortest flat that the pliers hold (usually 3 mm)',
  },
  {
    name: 'least radius',
    key: 'leastRadius',
    kind: 'number',
    meaning: 'the sharpest fold that the metal stands: its inside radius in thicknesses',
    most: 100,
  },
  {
    name: 'widest notch',
    key: 'widestNotch',
    kind: 'degrees',
    meaning: 'the widest notch, to each side, that folds may ask of the hem (usually 60)',
    most: 90,
  },
  {
    name: 'sharpest tip',
    key: 'mostPointed',
    kind: 'degrees',
    meaning: 'the most pointed corner that lets go of dough (usually 30)',
    most: 180,
  },
  {
    name: 'narrowest gap',
    key: 'narrowestGap',
    kind: 'length',
    meaning: 'the narrowest finger of dough, or slot between walls (usually 4 mm)',
  },
  {
    name: 'gentle radius',
    key: 'gentleRadius',
    kind: 'length',
    meaning: 'the tightest curve that parts of a long strip are joined on (usually 25 mm)',
  },
];

/** Reads one number of the handwork from its text. */
export function readHandworkNumber(
  { kind, most = Number.POSITIVE_INFINITY, aboveZero }: HandworkNumber,
  text: string,
  units: Unit,
): Reading<number> {
  const reading =
    kind === 'length'
      ? parseLength(text, units)
      : kind === 'degrees'
        ? readAngle(text)
        : readNumber(text);
  if (!reading.ok) return reading;
  if (reading.value < 0) return refuse({ code: 'must not be negative' });
  if (aboveZero && reading.value === 0) return refuse({ code: 'must be above zero' });
  if (reading.value > most) return refuse({ code: 'too large', limit: `${most}` });
  return accept(reading.value);
}

export function readHemStage(text: string): Reading<HemStage> {
  return readChoice(text, HEM_STAGES);
}

/** The handwork of the values that were read; those that are absent are left out. */
export function handworkOf(
  hemStage: HemStage | undefined,
  numberOf: (field: HandworkNumber) => number | undefined,
): Handwork {
  const numbers: Partial<Record<NumberKey, number>> = {};
  for (const field of HANDWORK_NUMBERS) {
    const value = numberOf(field);
    if (value !== undefined) numbers[field.key] = value;
  }
  return hemStage === undefined ? numbers : { ...numbers, hemStage };
}
