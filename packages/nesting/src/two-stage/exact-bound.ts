import type { StockClass } from '../stock-classes.js';
import type { Objective } from './objective.js';
import type { Priced } from './pricing.js';
import type { Faces } from './strip-families.js';

/**
 * Multipliers scaled to whole numbers, so that the bound they prove is computed
 * without rounding.
 */
export interface Multipliers {
  /** A power of two: multipliers count in units of 1/scale of the cost. */
  readonly scale: number;
  /** One for each piece, at least 0. */
  readonly pieces: Float64Array;
  /** On the budget, at least 0; 0 where there is none. */
  readonly budget: number;
}

export interface ExactBound {
  readonly multipliers: Multipliers;
  /** The bound times the scale; an exact whole number. */
  readonly scaled: number;
  /** For each class: the least that taking a sheet of it costs at these multipliers, scaled. */
  readonly classCost: readonly number[];
}

/** Sums below this are exact in double precision. */
const EXACT = 2 ** 52;
const FINEST_SCALE = 2 ** 30;

/** The finest scale at which every sum of the bound stays exact. */
export function exactScale(largestCost: number): number {
  let scale = FINEST_SCALE;
  while (scale > 1 && largestCost * scale * 4 > EXACT) scale /= 2;
  return scale;
}

/**
 * A lower bound on the cost of every plan, by Lagrange relaxation of demand
 * (and of the budget): sum of value times demand, less what each supply of
 * limited count could gain, plus what supplies that must be used cost beyond
 * their worth; values are first scaled down until no supply of
 * unlimited count gains anything (Farley 1990, "A note on bounding a class of
 * linear programming problems, including cutting stock problems"). It holds for
 * any multipliers, so nothing rests on the accuracy of the solver that made them.
 * @param priced the patterns priced at `multipliers.pieces`
 */
export function exactBound(
  priced: Priced,
  faces: Faces,
  classes: readonly StockClass[],
  demand: readonly number[],
  objective: Objective,
  multipliers: Multipliers,
): ExactBound {
  const { scale, budget } = multipliers;
  const full = classWorth(priced, faces, classes.length);
  const costs = classes.map((entry) =>
    entry.supplies.map((supply) => objective.cost(supply) * scale + supply.price * budget),
  );
  const shrink = unlimitedShrink(full, classes, costs);
  // One unit to the safe side outweighs the rounding of the products.
  const pieces =
    shrink >= 1
      ? multipliers.pieces
      : multipliers.pieces.map((value) => Math.max(0, Math.floor(value * shrink) - 1));
  const worth = shrink >= 1 ? full : full.map((value) => Math.ceil(value * shrink) + 1);
  let scaled = -budget * (objective.budget ?? 0);
  demand.forEach((quantity, i) => {
    scaled += pieces[i] * quantity;
  });
  const classCost = classes.map((entry, g) => {
    let least = Number.POSITIVE_INFINITY;
    entry.supplies.forEach((supply, t) => {
      const gain = Number.isFinite(supply.count) ? Math.max(0, worth[g] - costs[g][t]) : 0;
      if (gain > 0) scaled -= gain * supply.count;
      scaled += Math.max(0, costs[g][t] - worth[g]) * supply.least;
      least = Math.min(least, supply.least > 0 ? worth[g] : costs[g][t] + gain);
    });
    return least;
  });
  return { multipliers: { ...multipliers, pieces }, scaled, classCost };
}

/** Worth of the best pattern of each class, over its faces. */
function classWorth(priced: Priced, faces: Faces, classes: number): readonly number[] {
  const worth: number[] = new Array(classes).fill(0);
  faces.faces.forEach((face, index) => {
    worth[face.stockClass] = Math.max(worth[face.stockClass], priced.faceWorth[index]);
  });
  return worth;
}

function unlimitedShrink(
  worth: readonly number[],
  classes: readonly StockClass[],
  costs: readonly (readonly number[])[],
): number {
  let shrink = 1;
  classes.forEach((entry, g) => {
    entry.supplies.forEach((supply, t) => {
      if (Number.isFinite(supply.count) || worth[g] === 0) return;
      shrink = Math.min(shrink, costs[g][t] / worth[g]);
    });
  });
  return shrink;
}
