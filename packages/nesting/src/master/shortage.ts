import type { Objective } from './objective.js';
import type { StockClass } from './stock-class.js';

/** Where stock is short, a missing piece costs this many times more than all stock there could be. */
const LIMITED_FACTOR = 64;
/** Where sheets for the piece are without limit, this many times the dearest sheet is enough. */
const UNLIMITED_FACTOR = 8;

/** More than any plan costs that uses no more sheets than there are pieces. */
export function aboveEveryPlan(
  classes: readonly StockClass[],
  demand: readonly number[],
  objective: Objective,
): number {
  const pieces = demand.reduce((sum, quantity) => sum + quantity, 0);
  const packs = Math.max(...classes.flatMap((entry) => entry.supplies.map(({ unit }) => unit)));
  return 1 + (pieces + packs * classes.length) * dearestSupply(classes, objective);
}

/**
 * What going without a piece costs in the linear master: more than any plan
 * would gain by it, and yet as little as will do, since large numbers cost
 * digits. Any penalty leaves the bound valid; one too small would weaken it.
 */
export function shortagePenalties(
  classes: readonly StockClass[],
  demand: readonly number[],
  objective: Objective,
): readonly number[] {
  const unlimited = Math.max(1, dearestSupply(classes, objective)) * UNLIMITED_FACTOR;
  const limited = aboveEveryPlan(classes, demand, objective) * LIMITED_FACTOR;
  const endless = new Set(
    classes
      .filter((entry) => entry.supplies.some(({ count }) => count === Number.POSITIVE_INFINITY))
      .flatMap((entry) => entry.box.lays.map((lay) => lay.piece)),
  );
  return demand.map((_, piece) =>
    endless.has(piece) && objective.caps.length === 0 ? unlimited : limited,
  );
}

function dearestSupply(classes: readonly StockClass[], objective: Objective): number {
  return Math.max(
    0,
    ...classes.flatMap((entry) => entry.supplies.map((supply) => objective.cost?.of(supply) ?? 0)),
  );
}
