import type { StockClass } from '../stock-classes.js';
import type { Objective } from './objective.js';
import type { Faces } from './strip-families.js';

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
  return 1 + pieces * dearestSupply(classes, objective);
}

/**
 * What going without a piece costs in the linear master: more than any plan
 * would gain by it, and yet as little as will do, since large numbers cost
 * digits. Any penalty leaves the bound valid; one too small would weaken it.
 */
export function shortagePenalties(
  faces: Faces,
  classes: readonly StockClass[],
  demand: readonly number[],
  objective: Objective,
): readonly number[] {
  const unlimited = Math.max(1, dearestSupply(classes, objective)) * UNLIMITED_FACTOR;
  const limited = aboveEveryPlan(classes, demand, objective) * LIMITED_FACTOR;
  return demand.map((_, piece) => {
    const endless = faces.faces.some(
      (face) =>
        faces.families[face.family].lays.some(
          (lay) => lay.piece === piece && lay.across <= face.breadth,
        ) &&
        classes[face.stockClass].supplies.some(
          (supply) => supply.count === Number.POSITIVE_INFINITY,
        ),
    );
    return endless && objective.budget === undefined ? unlimited : limited;
  });
}

function dearestSupply(classes: readonly StockClass[], objective: Objective): number {
  return Math.max(...classes.flatMap((entry) => entry.supplies.map(objective.cost)));
}
