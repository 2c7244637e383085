import {
  families,
  makeStrip,
  neutralAxis,
  type Outline,
  type OutlineFamily,
  type OutlineSizes,
  type Strip,
} from '@stripwright/strip-geometry';
import { printLength, type Rule } from '../length/print-length.js';
import { MILLIMETRES, type ShopUnits } from '../length/unit.js';

/** One cutter of the gallery. */
export interface Exhibit {
  /** Lower-case words joined by dashes, for file names and links: `regular-polygon`, `letter-k`. */
  readonly id: string;
  /** `Regular polygon`, `Letter K` */
  readonly title: string;
  readonly summary: string;
  readonly family: OutlineFamily;
  readonly sizes: OutlineSizes;
  readonly outline: Outline;
  readonly strip: Strip;
}

/** How the cutters shown are made, in millimetres. Common practice for hand-made cutters. */
export const MAKING: Readonly<Record<ShopUnits, Making>> = {
  mm: { depth: 25, hem: 6, tab: 12 },
  in: { depth: MILLIMETRES.in, hem: MILLIMETRES.in / 4, tab: MILLIMETRES.in / 2 },
};

interface Making {
  readonly depth: number;
  readonly hem: number;
  readonly tab: number;
}

/** Millimetres. Common practice: thin tinplate, bent nearly sharp over a folding bar. */
export const TINPLATE = { thickness: 0.28, insideRadius: 0.4 } as const;

const BEND_RULE = neutralAxis({ ...TINPLATE, factor: 0.44 });

/** In inches the examples are shown in whole eighths. */
const STEP: Readonly<Record<ShopUnits, number | undefined>> = {
  mm: undefined,
  in: MILLIMETRES.in / 8,
};

const ALPHABET = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

/** Every family by the sizes of its example, and every letter. */
export function allExhibits({ units }: Rule): readonly Exhibit[] {
  return families.flatMap((family) => {
    const letter = family.sizes.find(({ kind }) => kind === 'letter');
    if (letter === undefined) return [exhibit(family, family.example, units)];
    return ALPHABET.map((name) =>
      exhibit(family, { ...family.example, [letter.name]: name }, units),
    );
  });
}

function exhibit(family: OutlineFamily, example: OutlineSizes, units: ShopUnits): Exhibit {
  const sizes = stepped(family, example, STEP[units]);
  const letter = family.sizes.find(({ kind }) => kind === 'letter');
  const name = letter === undefined ? family.name : `${family.name} ${sizes[letter.name]}`;
  const outline = family.draw(sizes);
  const { depth, hem, tab } = MAKING[units];
  return {
    id: name.toLowerCase().replaceAll(' ', '-'),
    title: `${name.charAt(0).toUpperCase()}${name.slice(1)}`,
    summary: family.summary,
    family,
    sizes,
    outline,
    strip: makeStrip({ outline, depth, hem, tab, bendRule: BEND_RULE }),
  };
}

function stepped(
  { sizes }: OutlineFamily,
  example: OutlineSizes,
  step: number | undefined,
): OutlineSizes {
  if (step === undefined) return example;
  const lengths = sizes.flatMap(({ name, kind }) => {
    const value = example[name];
    const whole = kind === 'length' && typeof value === 'number';
    return whole ? [[name, Math.round(value / step) * step] as const] : [];
  });
  return { ...example, ...Object.fromEntries(lengths) };
}

/** `across 100 mm, thick 35 mm`: the sizes that were given, apart from a letter in the title. */
export function sizeWords({ family, sizes }: Exhibit, rule: Rule): string {
  const words = family.sizes.flatMap(({ name, kind }) => {
    const value = sizes[name];
    if (value === undefined || kind === 'letter') return [];
    if (typeof value === 'object') return [`${value.length} ${name}`];
    if (typeof value === 'string') return [`${name} ${value}`];
    if (kind === 'length') return [`${name} ${printLength(value, rule)}`];
    return [`${name} ${value}${kind === 'angle' ? ' degrees' : ''}`];
  });
  return words.join(', ');
}
