import { checkPositive } from './check-positive.js';

/** Whether a metal may touch food, told as information; local codes decide. */
export interface FoodContact {
  readonly mayTouch: 'yes' | 'not with acidic food' | 'no';
  /** One sentence for the bench. */
  readonly why: string;
  /** The rule it is taken from. */
  readonly source: string;
}

/** A metal that sheets come in. */
export interface Metal {
  /** Lower-case words, such as `uncoated steel`. */
  readonly name: string;
  /** Grams a cubic centimetre. */
  readonly density: number;
  readonly food: FoodContact;
}

const SURFACES = 'US FDA Food Code 4-101.11; Regulation (EC) No 1935/2004, Article 3';
const COPPER: FoodContact = {
  mayTouch: 'not with acidic food',
  why: 'Copper and its alloys may not touch food of a pH below 6, such as dough with fruit, vinegar or buttermilk.',
  source: 'US FDA Food Code 4-101.14(A); Regulation (EC) No 1935/2004, Article 3',
};

/**
 * The metals this package knows. Densities are from memory, of the usual
 * alloys; copper's is the one that the sheet weights of `copperThickness` imply.
 */
export const metals: readonly Metal[] = [
  {
    name: 'tinplate',
    density: 7.85,
    food: {
      mayTouch: 'yes',
      why: 'Tin is fit for food; join it with lead-free solder only, or none.',
      source: `${SURFACES}; on lead solder, 21 CFR 189.240 (cans) and Food Code 4-101.13`,
    },
  },
  {
    name: 'uncoated steel',
    density: 7.85,
    food: {
      mayTouch: 'no',
      why: 'Bare steel rusts; surfaces that touch food again and again must resist corrosion.',
      source: SURFACES,
    },
  },
  {
    name: 'galvanized steel',
    density: 7.85,
    food: {
      mayTouch: 'not with acidic food',
      why: 'Acidic food, such as dough with fruit, vinegar or buttermilk, dissolves zinc.',
      source: 'US FDA Food Code 4-101.15; Regulation (EC) No 1935/2004, Article 3',
    },
  },
  { name: 'copper', density: 8.94, food: COPPER },
  {
    name: 'stainless steel',
    density: 8,
    food: {
      mayTouch: 'yes',
      why: 'Stainless steel of a food grade resists corrosion.',
      source: SURFACES,
    },
  },
  {
    name: 'aluminium',
    density: 2.7,
    food: {
      mayTouch: 'not with acidic food',
      why: 'Acid and salt dissolve bare aluminium.',
      source:
        'Council of Europe, technical guide on metals and alloys used in food contact ' +
        'materials (from memory); Regulation (EC) No 1935/2004, Article 3',
    },
  },
  { name: 'brass', density: 8.5, food: COPPER },
];

/** The metal of that name, such as `tinplate`, or undefined if there is none. */
export function metalNamed(name: string): Metal | undefined {
  return metals.find((metal) => metal.name === name);
}

/**
 * What to say when a cutter is planned from a metal that may not touch every
 * food, or undefined for one that may.
 */
export function foodWarning({ name, food }: Metal): string | undefined {
  if (food.mayTouch === 'yes') {
    return undefined;
  }
  const ban =
    food.mayTouch === 'no'
      ? `A cutter of ${name} should not touch food.`
      : `A cutter of ${name} should not touch acidic food.`;
  return `${ban} ${food.why} (${food.source}. For information; local codes decide.)`;
}

/**
 * Weight in grams of flat metal.
 *
 * @param area square millimetres, of one face
 * @param thickness millimetres
 * @throws MetalError if either is not above 0.
 */
export function sheetWeight({ density }: Metal, area: number, thickness: number): number {
  checkPositive('area', area, 'square mm');
  checkPositive('thickness', thickness, 'mm');
  return (density * area * thickness) / 1000;
}
