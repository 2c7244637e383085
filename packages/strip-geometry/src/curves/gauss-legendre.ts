/** The positive nodes of a rule on -1 to 1, and the weight of each. */
type Rule = readonly { readonly node: number; readonly weight: number }[];

const RULE: Rule = legendreRule(16);

/** A smaller rule, which has no node in common with the other, to see whether that can be trusted. */
const TRIAL: Rule = legendreRule(10);

/**
 * The Gauss-Legendre rule of `order` points, by Newton's method on the Legendre
 * polynomial. Its positive half. Source: Abramowitz and Stegun, Handbook of
 * Mathematical Functions, 25.4.29.
 */
function legendreRule(order: number): { node: number; weight: number }[] {
  return Array.from({ length: order / 2 }, (_, index) => {
    let node = Math.cos((Math.PI * (index + 0.75)) / (order + 0.5));
    let slope = 1;
    for (let step = 0; step < 8; step++) {
      let [value, before] = [node, 1];
      for (let degree = 2; degree <= order; degree++) {
        const next = ((2 * degree - 1) * node * value - (degree - 1) * before) / degree;
        [value, before] = [next, value];
      }
      slope = (order * (before - node * value)) / (1 - node * node);
      node -= value / slope;
    }
    return { node, weight: 2 / ((1 - node * node) * slope * slope) };
  });
}

function estimate(f: (u: number) => number, from: number, to: number, rule = RULE): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let sum = 0;
  for (const { node, weight } of rule) {
    sum += weight * (f(middle - half * node) + f(middle + half * node));
  }
  return sum * half;
}

/** How often a stretch is halved at most: far beyond what any kink needs. */
const DEEPEST = 48;

/**
 * The integral of `f` from `from` to `to` by a Gauss-Legendre rule of 16
 * points, halving every stretch on which a rule of 10 points, or the same rule
 * on both halves, disagrees with it by more than `tolerance`. Kinks, such as
 * the speed has at a cusp, are closed in on.
 */
export function integrate(
  f: (u: number) => number,
  from: number,
  to: number,
  tolerance: number,
): number {
  const whole = estimate(f, from, to);
  return Math.abs(estimate(f, from, to, TRIAL) - whole) <= tolerance
    ? whole
    : refine(f, from, to, whole, tolerance, DEEPEST);
}

function refine(
  f: (u: number) => number,
  from: number,
  to: number,
  whole: number,
  tolerance: number,
  depth: number,
): number {
  const middle = (from + to) / 2;
  const first = estimate(f, from, middle);
  const second = estimate(f, middle, to);
  if (depth === 0 || Math.abs(first + second - whole) <= tolerance) {
    return first + second;
  }
  return (
    refine(f, from, middle, first, tolerance, depth - 1) +
    refine(f, middle, to, second, tolerance, depth - 1)
  );
}
