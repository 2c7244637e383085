import { coinWorth, exactBound } from './exact-bound.js';
import type { Objective } from './objective.js';
import type { StockClass } from './stock-class.js';

export interface AreaBoundRequest {
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly objective: Objective;
  /** For each class, coins that no pattern's remnants exceed. */
  readonly keptAtMost: readonly number[];
  /** Coins that remnants are worth at most for each square tick. */
  readonly keptPerTick: number;
  /** For each piece, what going without one costs: more than it can be worth. */
  readonly penalties: readonly number[];
  readonly scale: number;
}

/** Prices of metal that are tried. */
const MOST_RATES = 30;
/** Outweighs the rounding of products. */
const ROUNDING = 1e-12;

/**
 * The bound by area, the first there is and the only one where there is no time for a linear plan:
 * if each piece is worth its metal at one price, no pattern is worth more than the metal of its box.
 * The price of metal is that of one stock or another, whichever proves the most.
 * @returns in units of 1/scale
 */
export function areaBound(request: AreaBoundRequest): number {
  const { classes, demand, objective, keptAtMost, keptPerTick, penalties, scale } = request;
  const caps = objective.caps.map(() => 0);
  const areas = new Map<number, number>();
  for (const { box } of classes) {
    for (const { piece, length, width } of box.lays) areas.set(piece, length * width);
  }
  const bounds = ratesOf(request).map((rate) => {
    const values = demand.map((_, piece) => Math.floor(rate * scale * (areas.get(piece) ?? 0)));
    // Sums must stay exact.
    if (values.some((value, piece) => value > penalties[piece] * scale)) return 0;
    const multipliers = { scale, pieces: Float64Array.from(values), caps };
    const kept = coinWorth(objective, multipliers) * keptPerTick;
    const perTick = Math.max(rate * scale, kept) * (1 + ROUNDING);
    const worth = classes.map(({ box }) => Math.ceil(perTick * box.length * box.width));
    return exactBound(worth, keptAtMost, classes, demand, objective, multipliers).scaled;
  });
  return Math.max(0, ...bounds);
}

/** What stock costs for each square tick; some of them, where they are many. */
function ratesOf({ classes, objective }: AreaBoundRequest): readonly number[] {
  const rates = new Set(
    classes.flatMap(({ box, supplies }) =>
      supplies.map((supply) => (objective.cost?.of(supply) ?? 0) / (box.length * box.width)),
    ),
  );
  const sorted = [...rates].sort((a, b) => a - b);
  const step = Math.ceil(sorted.length / MOST_RATES);
  return sorted.filter((_, index) => index % step === 0);
}
