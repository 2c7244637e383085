import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyOutlineOf } from '../any-outline.test.support.js';
import { isSimple } from '../is-simple.test.support.js';
import { bounds } from '../measure.js';
import { OutlineError } from '../outline-error.js';
import { totalTurn, turnAtJoint } from '../segment.js';
import { families, familyNamed } from './families.js';
import type { SizeKind, SizeValue } from './family.js';

test('names are unique, and find their family', () => {
  for (const family of families) {
    expect(familyNamed(family.name)).toBe(family);
  }
  expect(new Set(families.map(({ name }) => name)).size).toBe(families.length);
  expect(familyNamed('blob')).toBeUndefined();
});

test('messages name a family as one speaks of it', () => {
  expect(() => familyNamed('acorn')?.draw({})).toThrow(/^An acorn needs/);
  expect(() => familyNamed('heart')?.draw({})).toThrow(/^A heart needs/);
});

test('every family is tried below', () => {
  expect(Object.keys(anyOutlineOf)).toEqual(families.map(({ name }) => name));
});

describe.each(families.map((family) => [family.name, family] as const))('%s', (name, family) => {
  test('draws its example, under its own name', () => {
    expect(family.draw(family.example).name).toBe(name);
  });

  test('never crosses itself', () => {
    fc.assert(
      fc.property(anyOutlineOf[name] ?? fc.constant(family.draw(family.example)), (outline) => {
        expect(isSimple(outline)).toBe(true);
      }),
      { numRuns: 30 },
    );
  });

  // Theorem of turning tangents (Hopf): a simple closed curve turns once round.
  test('turns through 360 degrees in all', () => {
    fc.assert(
      fc.property(anyOutlineOf[name] ?? fc.constant(family.draw(family.example)), (outline) => {
        const { segments } = outline;
        const turning = segments.reduce((sum, segment, index) => {
          const next = segments[(index + 1) % segments.length] ?? segment;
          return sum + totalTurn(segment) + turnAtJoint(segment, next);
        }, 0);
        expect(turning).toBeCloseTo(2 * Math.PI, 9);
      }),
    );
  });

  test('refuses a size it does not have, and each required size left out', () => {
    expect(fieldOf(() => family.draw({ ...family.example, girth: 3 }))).toBe('girth');
    for (const { name: field, required } of family.sizes) {
      const without = { ...family.example, [field]: undefined };
      if (required) {
        expect(fieldOf(() => family.draw(without))).toBe(field);
      }
    }
  });

  test('refuses each size that is not what it should be', () => {
    for (const { name: field, kind } of family.sizes) {
      for (const value of WRONG[kind]) {
        const sizes = { ...family.example, [field]: value };
        expect(fieldOf(() => family.draw(sizes))).toBe(field);
      }
    }
  });
});

const NO_NUMBERS = [0, -1, Number.NaN, Infinity, [], 'four'];

const WRONG: Readonly<Record<SizeKind, readonly SizeValue[]>> = {
  length: NO_NUMBERS,
  count: [...NO_NUMBERS, 4.5],
  angle: [...NO_NUMBERS, 360],
  ratio: NO_NUMBERS,
  corners: [3, [{ x: 0, y: Number.NaN }], '0,0'],
  letter: [3, [], '', 'AB', '7', '\u00c9', ' A'],
};

function fieldOf(draw: () => unknown): string | undefined {
  try {
    draw();
  } catch (error) {
    if (error instanceof OutlineError) {
      return error.field;
    }
    throw error;
  }
  throw new Error('nothing was refused');
}

// Measured on the finished drawing, with the bulge of every arc.
describe('stated sizes are the real sizes', () => {
  const size = fc.double({ min: 10, max: 500, noNaN: true });
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const draw = (name: string, sizes: Record<string, number>) => {
    const family = familyNamed(name);
    if (family === undefined) {
      throw new Error(`no family ${name}`);
    }
    return bounds(family.draw(sizes));
  };

  test('circle', () => {
    fc.assert(
      fc.property(size, (across) => {
        const found = draw('circle', { across });
        expect(found.across).toBeCloseTo(across, 9);
        expect(found.high).toBeCloseTo(across, 9);
      }),
    );
  });

  test.each([
    ['heart', 'across', 'high', 0.7, 1.6],
    ['acorn', 'high', 'across', 0.6, 1],
    ['sailboat', 'across', 'high', 0.8, 1.6],
    ['rectangle', 'long', 'wide', 0.05, 1],
    ['ellipse', 'across', 'high', 0.25, 4],
    ['oval', 'long', 'wide', 0.1, 0.95],
    ['arrow', 'long', 'wide', 0.3, 1],
    ['teardrop', 'high', 'across', 0.5, 0.8],
    ['leaf', 'high', 'across', 0.4, 0.8],
    ['tree', 'high', 'across', 0.5, 1],
    ['bell', 'high', 'across', 0.82, 1.05],
    ['fish', 'long', 'high', 0.38, 0.62],
    ['house', 'across', 'high', 0.75, 1.3],
  ])('%s', (name, first, second, least, most) => {
    fc.assert(
      fc.property(size, share, (one, part) => {
        const two = Math.min(one * (least + part * (most - least)), one * most);
        const found = draw(name, { [first]: one, [second]: two });
        const tall = first === 'high';
        expect(tall ? found.high : found.across).toBeCloseTo(one, 9);
        expect(tall ? found.across : found.high).toBeCloseTo(two, 9);
      }),
    );
  });

  test.each([
    ['heart', 'across'],
    ['sailboat', 'across'],
    ['acorn', 'high'],
    ['arrow', 'long'],
    ['teardrop', 'high'],
    ['leaf', 'high'],
    ['tree', 'high'],
    ['bell', 'high'],
    ['fish', 'long'],
    ['house', 'across'],
    ['gingerbread figure', 'high'],
  ])('%s with the other size left to it', (name, given) => {
    fc.assert(
      fc.property(size, (value) => {
        const found = draw(name, { [given]: value });
        expect(given === 'high' ? found.high : found.across).toBeCloseTo(value, 9);
      }),
    );
  });

  test('plus sign', () => {
    fc.assert(
      fc.property(size, share, (across, part) => {
        const found = draw('plus sign', { across, arm: across * (0.15 + 0.44 * part) });
        expect(found.across).toBeCloseTo(across, 9);
        expect(found.high).toBeCloseTo(across, 9);
      }),
    );
  });

  test('gingerbread figure: nine tenths as wide as high, as its help says', () => {
    fc.assert(
      fc.property(size, (high) => {
        expect(draw('gingerbread figure', { high }).across).toBeCloseTo(0.9 * high, 9);
      }),
    );
  });

  test('flower: from petal to opposite petal', () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 2, max: 8 }), (across, pairs) => {
        const found = draw('flower', { petals: 2 * pairs, across });
        expect(found.high).toBeCloseTo(across, 9);
      }),
    );
  });

  test('crescent', () => {
    fc.assert(
      fc.property(size, share, (across, part) => {
        const thick = Math.min(across * (0.1 + 0.5 * part), 0.6 * across);
        const found = draw('crescent', { across, thick });
        expect(found.high).toBeCloseTo(across, 9);
        expect(found.left).toBeCloseTo(-across / 2, 9);
      }),
    );
  });

  test('regular polygon across flats, and a square by its side', () => {
    fc.assert(
      fc.property(size, fc.integer({ min: 2, max: 12 }), (given, half) => {
        const found = draw('regular polygon', { sides: 2 * half, 'across flats': given });
        expect(found.high).toBeCloseTo(given, 9);
        const square = draw('regular polygon', { sides: 4, side: given });
        expect(square.across).toBeCloseTo(given, 9);
      }),
    );
  });
});
