import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toRadians } from '../angle.js';
import { bounds, perimeter, signedArea } from '../measure.js';
import type { Outline } from '../outline.js';
import { distance } from '../point.js';
import { lengthOf, tightestRadius, turnAtJoint } from '../segment.js';
import { letter } from './letter.js';
import { levelEnd, levelEndAt, STROKE } from './letters/stroke.js';

const ALPHABET = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

const drawn = (name: string, high = 1) => letter.draw({ letter: name, high });

describe.each(ALPHABET)('%s', (name) => {
  test('stands on the line, as high as stated, and is no wider than it must be', () => {
    fc.assert(
      fc.property(fc.double({ min: 30, max: 200, noNaN: true }), (high) => {
        const found = bounds(drawn(name, high));
        expect(found.bottom).toBeCloseTo(0, 9);
        expect(found.top).toBeCloseTo(high, 9);
        expect(found.left).toBeCloseTo(0, 9);
        expect(found.across).toBeLessThan(1.3 * high);
      }),
      { numRuns: 10 },
    );
  });

  test('can be made 75 mm high: no side under 5 mm, no curve under 7 mm radius', () => {
    for (const segment of drawn(name, 75).segments) {
      expect(lengthOf(segment)).toBeGreaterThan(5);
      expect(tightestRadius(segment)).toBeGreaterThan(7);
    }
  });
});

test('a small letter asks for the capital', () => {
  expect(drawn('r', 60)).toEqual(drawn('R', 60));
});

test.each([...'HIMOTUVWXY'])('%s is its own mirror image', (name) => {
  const outline = drawn(name);
  const { across } = bounds(outline);
  for (const { from } of outline.segments) {
    expect(hasCorner(outline, across - from.x, from.y)).toBe(true);
  }
});

test.each([...'HINOSXZ'])('%s reads the same upside down', (name) => {
  const outline = drawn(name);
  const { across } = bounds(outline);
  for (const { from } of outline.segments) {
    expect(hasCorner(outline, across - from.x, 1 - from.y)).toBe(true);
  }
});

function hasCorner({ segments }: Outline, x: number, y: number): boolean {
  return segments.some(({ from }) => distance(from, { x, y }) < 1e-9);
}

// Pappus: a stroke covers its width times the length of its middle line, and its two sides
// together are twice that line, since what one gains in a curve the other loses, as long as the
// stroke turns no further one way than the other or both its sides are counted.
test.each([...'CJSU'])('%s is one stroke of even width', (name) => {
  const outline = drawn(name);
  const middle = (perimeter(outline) - 2 * STROKE) / 2;
  expect(signedArea(outline)).toBeCloseTo(middle * STROKE, 9);
});

// Area of a slanting stroke in its box, both ways: as a parallelogram on its level end, and as
// its slanting side times the width of the stroke.
test('slanting strokes are as wide as upright ones', () => {
  const size = fc.double({ min: 0.3, max: 2, noNaN: true });
  fc.assert(
    fc.property(size, size, (width, height) => {
      const end = levelEnd(width, height);
      expect(end * height).toBeCloseTo(STROKE * Math.hypot(height, width - end), 9);
      expect(levelEndAt(width - end, height)).toBeCloseTo(end, 9);
    }),
  );
});

/** Distance between two parallel sides of a letter, by the numbers of the corners they start at. */
function apart(name: string, first: number, second: number): number {
  const { segments } = drawn(name);
  const [a, b] = [segments[first], segments[second]];
  if (a === undefined || b === undefined) {
    throw new Error('no such side');
  }
  const [x, y] = [a.to.x - a.from.x, a.to.y - a.from.y];
  const [u, v] = [b.to.x - b.from.x, b.to.y - b.from.y];
  expect(Math.abs(x * v - y * u)).toBeLessThan(1e-9);
  return Math.abs(x * (b.from.y - a.from.y) - y * (b.from.x - a.from.x)) / Math.hypot(x, y);
}

test.each<[string, number, number]>([
  ['A', 1, 7],
  ['K', 3, 5],
  ['K', 6, 8],
  ['M', 3, 11],
  ['N', 3, 9],
  ['R', 3, 5],
  ['V', 1, 3],
  ['W', 1, 11],
  ['W', 13, 15],
  ['X', 1, 11],
  ['Y', 2, 4],
  ['Z', 4, 10],
])('%s: its slanting stroke between corners %i and %i is as wide as the rest', (name, a, b) => {
  expect(apart(name, a, b)).toBeCloseTo(STROKE, 9);
});

// Workability's limit: a notch of 60 degrees to each side leaves a hem (common practice).
test.each(ALPHABET)('%s: every fold that closes the hem is one that a notch clears', (name) => {
  const { segments } = drawn(name);
  segments.forEach((segment, index) => {
    const turn = turnAtJoint(segment, segments[(index + 1) % segments.length] ?? segment);
    expect(turn).toBeGreaterThan(-toRadians(120));
  });
});
