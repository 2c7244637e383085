import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { point } from '../point.js';
import { deepestOf, depthAt, type EdgeProfile, stretchesWithin } from './edge-profile.js';

const v = (at: number, depth: number, half: number): EdgeProfile => [
  point(at - half, 0),
  point(at, depth),
  point(at + half, 0),
];

test('without cuts the edge is straight', () => {
  expect(deepestOf([], 50)).toEqual([point(0, 0), point(50, 0)]);
});

test('two cuts that overlap leave a tooth between them', () => {
  expect(deepestOf([v(20, 6, 6), v(28, 6, 6)], 50)).toEqual([
    point(0, 0),
    point(14, 0),
    point(20, 6),
    point(24, 2),
    point(28, 6),
    point(34, 0),
    point(50, 0),
  ]);
});

test('cuts beyond the ends are left out, and steps are kept', () => {
  const step: EdgeProfile = [point(40, 0), point(40, 5), point(60, 5)];
  expect(deepestOf([v(0, 4, 4), step], 50)).toEqual([
    point(0, 4),
    point(4, 0),
    point(40, 0),
    point(40, 5),
    point(50, 5),
  ]);
});

describe('for any cuts', () => {
  const part = fc.double({ min: 0, max: 1, noNaN: true });
  const anyV = fc
    .record({ at: part, depth: part, half: part })
    .map(({ at, depth, half }) => v(120 * at - 10, 0.5 + 10 * depth, 0.1 + 15 * half));
  const anyCuts = fc.array(anyV, { maxLength: 12 });

  test('the profile is as deep as the deepest cut, everywhere', () => {
    fc.assert(
      fc.property(anyCuts, part, (cuts, share) => {
        const x = 100 * share;
        const deepest = Math.max(0, ...cuts.map((cut) => depthAt(cut, x)));
        // A V of width 0.2 is steep: points that coincide within a millionth are one.
        expect(Math.abs(depthAt(deepestOf(cuts, 100), x) - deepest)).toBeLessThan(1e-3);
      }),
    );
  });

  test('it runs from end to end, ascending', () => {
    fc.assert(
      fc.property(anyCuts, (cuts) => {
        const xs = deepestOf(cuts, 100).map(({ x }) => x);
        expect([xs[0], xs.at(-1)]).toEqual([0, 100]);
        expect(xs).toEqual([...xs].sort((a, b) => a - b));
      }),
    );
  });

  test('a line along it is left where the cuts are no deeper', () => {
    fc.assert(
      fc.property(anyCuts, part, part, (cuts, share, height) => {
        const [profile, x, depth] = [deepestOf(cuts, 100), 100 * share, 10 * height];
        const here = depthAt(profile, x);
        fc.pre(Math.abs(here - depth) > 1e-3);
        const isLeft = stretchesWithin(profile, depth).some(({ from, to }) => from <= x && x <= to);
        expect(isLeft).toBe(here < depth);
      }),
    );
  });
});
