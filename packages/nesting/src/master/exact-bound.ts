import type { Objective } from './objective.js';
import type { StockClass } from './stock-class.js';

/**
 * Multipliers scaled to whole numbers, so that the bound they prove is computed
 * without rounding.
 */
export interface Multipliers {
  /** A power of two: multipliers count in units of 1/scale of the cost. */
  readonly scale: number;
  /** One for each piece, at least 0. */
  readonly pieces: Float64Array;
  /** One for each cap of the objective, at least 0. */
  readonly caps: readonly number[];
}

export interface ExactBound {
  /** Those that prove it. */
  readonly multipliers: Multipliers;
  /** Those that it was computed from, before they shrank. */
  readonly asked: Multipliers;
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
 * (and of the caps): sum of value times demand, less what each supply of
 * limited count could gain, plus what supplies that must be paid for cost beyond
 * their worth; values are first scaled down until no supply of unlimited count
 * gains anything (Farley 1990, "A note on bounding a class of linear programming
 * problems, including cutting stock problems"). It holds for any multipliers, so
 * nothing rests on the accuracy of the solver that made them.
 * @param worth for each class, what no pattern exceeds at these multipliers, kept coins included
 * @param keptAtMost for each class, coins that no pattern's remnants exceed
 */
export function exactBound(
  worth: readonly number[],
  keptAtMost: readonly number[],
  classes: readonly StockClass[],
  demand: readonly number[],
  objective: Objective,
  multipliers: Multipliers,
): ExactBound {
  const { scale } = multipliers;
  const coin = coinWorth(objective, multipliers);
  const kept = keptAtMost.map((coins) => coins * coin);
  const costs = classes.map((entry) =>
    entry.supplies.map((supply) =>
      objective.caps.reduce(
        (sum, { measure }, c) => sum + measure.of(supply) * multipliers.caps[c],
        (objective.cost?.of(supply) ?? 0) * scale,
      ),
    ),
  );
  const shrink = unlimitedShrink(worth, kept, classes, costs);
  // One unit to the safe side outweighs the rounding of the products.
  const pieces =
    shrink >= 1
      ? multipliers.pieces
      : multipliers.pieces.map((value) => Math.max(0, Math.floor(value * shrink) - 1));
  const full =
    shrink >= 1
      ? worth
      : worth.map((value, g) =>
          value <= kept[g] ? value : Math.ceil(kept[g] + (value - kept[g]) * shrink) + 1,
        );
  let scaled = 0;
  objective.caps.forEach(({ atMost }, c) => {
    scaled -= multipliers.caps[c] * atMost;
  });
  demand.forEach((quantity, i) => {
    scaled += pieces[i] * quantity;
  });
  // Pieces that are worth nothing at these values may leave more than the worth counts.
  const idle = demand.some((quantity, i) => quantity > 0 && pieces[i] <= 0);
  const classCost = classes.map((entry, g) => {
    let least = Number.POSITIVE_INFINITY;
    entry.supplies.forEach((supply, t) => {
      const gain = Number.isFinite(supply.count) ? Math.max(0, full[g] - costs[g][t]) : 0;
      if (gain > 0) scaled -= gain * supply.count;
      const back = Math.max(full[g], idle ? kept[g] : 0, supply.leftOver * coin);
      scaled += Math.max(0, costs[g][t] - back) * supply.least;
      least = Math.min(least, supply.least > 0 ? full[g] : costs[g][t] + gain);
    });
    return least;
  });
  return { multipliers: { ...multipliers, pieces }, asked: multipliers, scaled, classCost };
}

/** What a coin of kept remnants is worth at the multipliers, in units of 1/scale. */
export function coinWorth(objective: Objective, { scale, caps }: Multipliers): number {
  return objective.caps.reduce(
    (sum, { measure }, c) => sum + measure.coin * caps[c],
    (objective.cost?.coin ?? 0) * scale,
  );
}

/**
 * By how much values must shrink so that no supply without limit gains. A pattern
 * worth W, of it at most K for its remnants, is worth at most K + s (W - K) when
 * the values of its pieces shrink by s.
 */
function unlimitedShrink(
  worth: readonly number[],
  kept: readonly number[],
  classes: readonly StockClass[],
  costs: readonly (readonly number[])[],
): number {
  let shrink = 1;
  classes.forEach((entry, g) => {
    entry.supplies.forEach((supply, t) => {
      if (Number.isFinite(supply.count) || worth[g] <= costs[g][t]) return;
      shrink = Math.min(shrink, Math.max(0, costs[g][t] - kept[g]) / (worth[g] - kept[g]));
    });
  });
  return shrink;
}
