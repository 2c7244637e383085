/**
 * The places where a x^2 + b x + c is 0, without the loss of digits of the
 * schoolbook formula. Where a or b is 0 there are fewer.
 */
export function quadraticRoots(a: number, b: number, c: number): number[] {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) {
    return [];
  }
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  return [q / a, c / q].filter(Number.isFinite);
}

/**
 * The places strictly between `from` and `to`, which lie from 0 to 1, where a
 * polynomial changes sign, ascending. Coefficients start with the constant.
 * Between two neighbouring turning points, which are sign changes of the
 * derivative, a polynomial changes sign at most once.
 */
export function signChanges(coefficients: readonly number[], from: number, to: number): number[] {
  const degree = coefficients.findLastIndex((coefficient) => coefficient !== 0);
  if (degree < 1 || keepsSign(coefficients, degree)) {
    return [];
  }
  if (degree === 1) {
    const [constant = 0, slope = 1] = coefficients;
    const root = -constant / slope;
    return root > from && root < to ? [root] : [];
  }
  const derivative = coefficients.slice(1, degree + 1).map((c, index) => c * (index + 1));
  const stops = [from, ...signChanges(derivative, from, to), to];
  const found: number[] = [];
  for (let index = 1; index < stops.length; index++) {
    const root = rootBetween(coefficients, stops[index - 1] ?? from, stops[index] ?? to);
    if (root !== undefined && root > from && root < to) {
      found.push(root);
    }
  }
  return found;
}

/**
 * Whether the polynomial is known to have one sign from 0 to 1: it lies between
 * the least and the greatest of its Bernstein coefficients.
 */
function keepsSign(coefficients: readonly number[], degree: number): boolean {
  const bernstein: number[] = [];
  let binomial = 1;
  for (let index = 0; index <= degree; index++) {
    bernstein.push((coefficients[index] ?? 0) / binomial);
    binomial *= (degree - index) / (index + 1);
  }
  for (let round = 1; round <= degree; round++) {
    for (let index = degree; index >= round; index--) {
      bernstein[index] = (bernstein[index] ?? 0) + (bernstein[index - 1] ?? 0);
    }
  }
  return bernstein.every((value) => value > 0) || bernstein.every((value) => value < 0);
}

function valueAt(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (let index = coefficients.length - 1; index >= 0; index--) {
    value = value * x + (coefficients[index] ?? 0);
  }
  return value;
}

function slopeAt(coefficients: readonly number[], x: number): number {
  let slope = 0;
  for (let index = coefficients.length - 1; index > 0; index--) {
    slope = slope * x + index * (coefficients[index] ?? 0);
  }
  return slope;
}

/** Enough halvings for any pair of doubles between 0 and 1. */
const MOST_STEPS = 64;

/** The sign change of a polynomial that only rises or only falls between the two places. */
function rootBetween(
  coefficients: readonly number[],
  from: number,
  to: number,
): number | undefined {
  const first = valueAt(coefficients, from);
  const last = valueAt(coefficients, to);
  if (first === 0 || first > 0 === last > 0) {
    return undefined;
  }
  let [low, high] = [from, to];
  let place = (low + high) / 2;
  for (let step = 0; step < MOST_STEPS; step++) {
    const value = valueAt(coefficients, place);
    if (value > 0 === first > 0) {
      low = place;
    } else {
      high = place;
    }
    // Newton's step where it stays between the bounds, half of what is left where it does not.
    const aimed = place - value / slopeAt(coefficients, place);
    const next = aimed > low && aimed < high ? aimed : (low + high) / 2;
    if (Math.abs(next - place) <= 1e-16) {
      return next;
    }
    place = next;
  }
  return place;
}
