import type { CuttingProblem } from '../problem.js';
import { groundOf } from '../search/ground.test.support.js';

/** What pieces may be worth: together, or one of them alone. */
const VALUES = [
  [185, 116, 126],
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** What a search of three pieces works with, its book filled by first fit and by pricing at several values. */
export function pricedGround(problem: CuttingProblem) {
  const { ground, start } = groundOf(problem);
  for (const { pattern } of start ?? []) ground.book.addPattern(pattern);
  for (const values of VALUES) {
    const priced = ground.pricer.price(values, 0);
    ground.classes.forEach((_, g) => {
      for (const { pattern } of priced.patterns(g)) ground.book.addPattern(pattern);
    });
  }
  return ground;
}
