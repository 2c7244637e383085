import { toRadians } from '../angle.js';
import { point, polar } from '../point.js';
import { defineFamily } from './define-family.js';
import { type Post, roundPosts } from './round-posts.js';

/** The posts that the outline runs round, in parts of the height, feet on the x axis. */
const CROTCH: Post = { centre: point(0, 0.21), radius: 0.056, turn: 'out' };
const FOOT: Post = { centre: point(0.165, 0.085), radius: 0.085, turn: 'in' };
const ARMPIT: Post = { centre: point(0.245, 0.41), radius: 0.058, turn: 'out' };
const HAND: Post = { centre: point(0.37, 0.54), radius: 0.08, turn: 'in' };
const HEAD: Post = { centre: point(0, 0.82), radius: 0.18, turn: 'in' };
const NECK_RADIUS = 0.056;
/** From the middle of the head to that of the rounding between head and shoulder. */
const NECK_DIRECTION = toRadians(-47);
/** Touches the head. */
const NECK: Post = {
  centre: polar(HEAD.centre, HEAD.radius + NECK_RADIUS, NECK_DIRECTION),
  radius: NECK_RADIUS,
  turn: 'out',
};

const RIGHT = [FOOT, ARMPIT, HAND, NECK];
const LEFT = RIGHT.map((post) => {
  return { ...post, centre: point(-post.centre.x, post.centre.y) };
}).reverse();

/** A gingerbread figure that stands on the x axis, its middle on the y axis. */
export const gingerbreadFigure = defineFamily({
  name: 'gingerbread figure',
  summary: 'A round-headed figure, arms out and feet apart, every corner rounded.',
  sizes: [
    {
      name: 'high',
      kind: 'length',
      required: true,
      meaning: `from feet to crown; it is ${2 * (HAND.centre.x + HAND.radius)} of that across`,
    },
  ],
  example: { high: 120 },
  path(sizes) {
    const high = sizes.number('high');
    const posts = [CROTCH, ...RIGHT, HEAD, ...LEFT];
    return roundPosts(
      posts.map(({ centre: { x, y }, radius, turn }) => {
        return { centre: point(x * high, y * high), radius: radius * high, turn };
      }),
    );
  },
});
