import { expect, test } from 'vitest';
import { distance, point } from '../point.js';
import { apex, towards } from './apex.js';

// Euclid, the triangle of 3, 4 and 5 with its right angle at the first corner.
test('closes the triangle of 3, 4 and 5 to the left', () => {
  const a = point(10, 20);
  const corner = apex(a, 3, point(14, 20), 5);
  expect(corner.x).toBeCloseTo(10, 12);
  expect(corner.y).toBeCloseTo(23, 12);
  const other = apex(point(14, 20), 5, a, 3);
  expect(other.y).toBeCloseTo(17, 12);
});

test('a circle about the apex touches both circles where it should', () => {
  const [a, b] = [point(0, 0), point(30, 10)];
  const centre = apex(a, 8 + 12, b, 5 + 12);
  const touch = towards(a, centre, 8);
  expect(distance(a, touch)).toBeCloseTo(8, 12);
  expect(distance(centre, touch)).toBeCloseTo(12, 12);
  expect(distance(centre, towards(b, centre, 5))).toBeCloseTo(12, 12);
});
