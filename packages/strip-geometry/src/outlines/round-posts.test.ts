import { expect, test } from 'vitest';
import { checkOutline } from '../check-outline.js';
import { perimeter } from '../measure.js';
import { point } from '../point.js';
import { turnAtJoint } from '../segment.js';
import { type Post, roundPosts } from './round-posts.js';

const post = (x: number, y: number, radius: number, turn: Post['turn'] = 'in'): Post => {
  return { centre: point(x, y), radius, turn };
};

function laidRound(posts: readonly Post[]) {
  const outline = { name: 'cord', segments: roundPosts(posts) };
  checkOutline(outline);
  outline.segments.forEach((segment, index, all) => {
    expect(turnAtJoint(segment, all[(index + 1) % all.length] ?? segment)).toBeCloseTo(0, 6);
  });
  return outline;
}

// Length of an open belt by the handbook formula, as found in Machinery's Handbook (from memory):
// 2 sqrt(c^2 - (R - r)^2) + pi (R + r) + 2 (R - r) asin((R - r) / c).
test('round two wheels it is as long as an open belt', () => {
  const [far, big, small] = [120, 40, 25];
  const belt =
    2 * Math.sqrt(far ** 2 - (big - small) ** 2) +
    Math.PI * (big + small) +
    2 * (big - small) * Math.asin((big - small) / far);
  const outline = laidRound([post(0, 0, big), post(far, 0, small)]);
  expect(perimeter(outline)).toBeCloseTo(belt, 9);
  expect(outline.segments.map(({ kind }) => kind)).toEqual(['arc', 'line', 'arc', 'line']);
});

test('a post turned out draws the cord in', () => {
  const three = laidRound([post(0, 0, 10), post(60, 0, 10), post(30, 50, 10)]);
  const drawn = laidRound([
    post(0, 0, 10),
    post(30, 5, 5, 'out'),
    post(60, 0, 10),
    post(30, 50, 10),
  ]);
  expect(three.segments).toHaveLength(6);
  expect(drawn.segments).toHaveLength(8);
  expect(drawn.segments.filter((part) => part.kind === 'arc' && part.sweep < 0)).toHaveLength(1);
});

test('posts that touch follow each other without a straight', () => {
  // The middle post touches both wheels, 3-4-5 triangles twice the size.
  const waist = laidRound([
    post(0, 0, 6),
    post(8, -6, 4, 'out'),
    post(16, 0, 6),
    post(8, 6, 4, 'out'),
  ]);
  expect(waist.segments.map(({ kind }) => kind)).toEqual(['arc', 'arc', 'arc', 'arc']);
});
