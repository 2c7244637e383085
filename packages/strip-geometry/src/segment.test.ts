import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from './any-outline.test.support.js';
import { distance, point, polar } from './point.js';
import {
  arc,
  arcBetween,
  headingAtEnd,
  headingAtStart,
  lengthOf,
  line,
  reversed,
  turnAtJoint,
} from './segment.js';

const east = point(1, 0);
const north = point(0, 1);
const origin = point(0, 0);

test('an arc ends where its sweep brings it', () => {
  const { to } = arc(east, origin, Math.PI / 2);
  expect(distance(to, north)).toBeCloseTo(0, 12);
});

test('an arc between two points goes round the way it is told', () => {
  expect(arcBetween(east, north, origin, 'anticlockwise').sweep).toBeCloseTo(Math.PI / 2, 12);
  expect(arcBetween(east, north, origin, 'clockwise').sweep).toBeCloseTo(-1.5 * Math.PI, 12);
  expect(arcBetween(north, east, origin, 'anticlockwise').sweep).toBeCloseTo(1.5 * Math.PI, 12);
  expect(arcBetween(north, east, origin, 'clockwise').sweep).toBeCloseTo(-Math.PI / 2, 12);
});

test('lengths', () => {
  expect(lengthOf(line(origin, point(3, 4)))).toBe(5);
  expect(lengthOf(arc(point(2, 0), origin, -Math.PI))).toBeCloseTo(2 * Math.PI, 12);
});

test('headings are tangents, and turn round when the segment is reversed', () => {
  fc.assert(
    fc.property(
      between(-3, 3),
      between(0.5, 50),
      between(0.1, 6),
      fc.boolean(),
      (at, radius, swept, left) => {
        const sweep = left ? swept : -swept;
        const segment = arc(polar(origin, radius, at), origin, sweep);
        const [start, end] = [headingAtStart(segment), headingAtEnd(segment)];
        const side = left ? Math.PI / 2 : -Math.PI / 2;
        expect(distance(start, polar(origin, 1, at + side))).toBeCloseTo(0, 9);
        expect(distance(end, polar(origin, 1, at + sweep + side))).toBeCloseTo(0, 9);
        const backwards = headingAtStart(reversed(segment));
        expect(distance(backwards, point(-end.x, -end.y))).toBeCloseTo(0, 9);
      },
    ),
  );
});

test('a turn to the left counts above 0', () => {
  const first = line(origin, east);
  expect(turnAtJoint(first, line(east, point(1, 1)))).toBeCloseTo(Math.PI / 2, 12);
  expect(turnAtJoint(first, line(east, point(1, -1)))).toBeCloseTo(-Math.PI / 2, 12);
  // From a line into an arc that leaves it smoothly.
  expect(turnAtJoint(first, arc(east, north, 1))).toBeCloseTo(Math.PI / 4, 12);
  expect(turnAtJoint(first, arc(east, point(1, 1), 1))).toBeCloseTo(0, 12);
});
