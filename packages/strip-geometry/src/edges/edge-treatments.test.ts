import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { StripError } from '../strip-error.js';
import { doubleHem } from './double-hem.js';
import { edgeTreatmentNamed, edgeTreatments } from './edge-treatments.js';
import { rawEdge } from './raw-edge.js';
import { singleHem } from './single-hem.js';
import { wiredEdge } from './wired-edge.js';

const INCH = 25.4;
const anyWidth = fc.double({ min: 0.5, max: 20, noNaN: true });

// NAVEDTRA 14251, Steelworker vol. 2, chapter 2, fabrication of edges, joints, seams, and
// notches, figures 2-54 to 2-56.
describe('the Navy training manual', () => {
  test('a single hem of width W takes W', () => {
    fc.assert(fc.property(anyWidth, (width) => singleHem(width).allowance === width));
  });

  test('a double hem takes 2 W', () => {
    fc.assert(fc.property(anyWidth, (width) => doubleHem(width).allowance === 2 * width));
  });

  test('a wired edge takes 2 1/2 wire diameters: 1/8 in wire takes 5/16 in', () => {
    expect(wiredEdge(INCH / 8).allowance).toBeCloseTo((5 / 16) * INCH, 12);
    fc.assert(fc.property(anyWidth, (wire) => wiredEdge(wire).allowance === 2.5 * wire));
  });

  // The same rule worked out: a strip 1/2 in deep.
  test('a 1/2 in strip with a 1/8 in hem is cut 5/8 in wide, with a double hem 3/4 in', () => {
    expect(0.5 + singleHem(0.125).allowance).toBe(0.625);
    expect(0.5 + doubleHem(0.125).allowance).toBe(0.75);
  });
});

// E. Thatcher, Making Tin Can Toys, 1919, chapter III: a cutter's handle is cut 1 1/4 in wide,
// scribed 1/4 in from each long side, and both edges are folded: it ends up 3/4 in wide.
test('a handle cut 1 1/4 in wide with two hems of 1/4 in is 3/4 in wide', () => {
  expect(1.25 - 2 * singleHem(0.25).allowance).toBe(0.75);
});

// By hand, from the neutral axis: a fold of 180 degrees at R = 0, K = 0.447, T = 0.0118 in takes
// pi K T and covers 2 T less flat, H + W - 2 T + pi K T in all. So H + W is safe by under 1/128 in.
test('the metal of the fold itself makes less than 1/128 in', () => {
  const exact = 0.5 - 0.0118 + Math.PI * 0.447 * 0.0118 + (0.125 - 0.0118);
  const spare = 0.5 + singleHem(0.125).allowance - exact;
  expect(spare).toBeCloseTo(0.007, 4);
  expect(spare).toBeLessThan(1 / 128);
});

test('a raw edge adds nothing, folds nothing and is not notched', () => {
  expect(rawEdge()).toMatchObject({ allowance: 0, foldLines: [], notchDepth: 0, layers: 0 });
});

describe('for every kind of edge', () => {
  const anyEdge = fc
    .tuple(fc.constantFrom(...edgeTreatments), anyWidth)
    .map(([kind, length]) =>
      kind.make(Object.fromEntries(kind.sizes.map(({ name }) => [name, length]))),
    );

  test('fold lines ascend, and the wall begins where notches end and the allowance is used up', () => {
    fc.assert(
      fc.property(anyEdge, ({ foldLines, notchDepth, allowance, foldedWidth }) => {
        expect(foldLines).toEqual([...foldLines].sort((a, b) => a - b));
        expect(notchDepth).toBe(foldLines.at(-1) ?? 0);
        expect(allowance).toBe(notchDepth);
        expect(foldedWidth).toBeLessThanOrEqual(notchDepth);
      }),
    );
  });

  test.each(edgeTreatments)('$name is found by its name and made from its example', (kind) => {
    expect(edgeTreatmentNamed(kind.name)).toBe(kind);
    expect(Object.keys(kind.example)).toEqual(kind.sizes.map(({ name }) => name));
    const edge = kind.make(kind.example);
    expect(edge.name).toBe(kind.name);
    expect(edge.source).not.toBe('');
  });

  test.each(edgeTreatments.filter(({ sizes }) => sizes.length > 0))(
    '$name refuses a length that is missing or not above 0',
    ({ make, sizes: [size] }) => {
      const field = size?.name ?? expect.fail();
      for (const wrong of [undefined, 0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
        const refused = () => make({ [field]: wrong });
        expect(refused).toThrow(StripError);
        expect(refused).toThrow(expect.objectContaining({ field }));
      }
    },
  );
});

test('there is no edge of another name', () => {
  expect(edgeTreatmentNamed('beaded edge')).toBeUndefined();
});
