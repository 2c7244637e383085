import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxCase } from '../box-solver/random-box.test.support.js';
import { knownFaces } from './known-faces.js';
import { stripFaces } from './strip-family.js';

describe('knownFaces', () => {
  it('are those that would be made anew, whatever was asked for before', () => {
    const tried = fc.constantFrom('few', 'needed', 'every');
    const drawn = fc.record({
      one: boxCase({ most: 20, narrowest: true }),
      other: boxCase({ most: 20, narrowest: true }),
      asked: fc.array(fc.tuple(tried, fc.boolean()), { minLength: 2, maxLength: 6 }),
    });
    fc.assert(
      fc.property(drawn, ({ one, other, asked }) => {
        const boxes = [one.box];
        for (const [tried, first] of asked) {
          const { limits } = first ? one : other;
          const faces = knownFaces(boxes, limits, tried);
          expect(faces).toEqual(stripFaces(boxes, limits, tried));
          expect(knownFaces(boxes, { ...limits }, tried)).toBe(faces);
        }
      }),
    );
  });
});
