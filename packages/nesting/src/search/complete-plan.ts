import { type Measure, totalCost } from '../master/objective.js';
import { without } from './class-supplies.js';
import type { SearchGround } from './ground.js';
import { demandLeft, keptCoins, type Planned, sheetsUsed } from './planned.js';

/** The first sheets of a plan that together cost no more than is allowed. */
export function withinCost(
  { classes }: SearchGround,
  planned: readonly Planned[],
  measure: Measure,
  atMost: number,
): readonly Planned[] {
  const kept: Planned[] = [];
  for (const { pattern, count } of planned) {
    for (let copies = count; copies > 0; copies--) {
      const tried = [...kept, { pattern, count: copies }];
      const used = sheetsUsed(tried, classes.length);
      const cost = totalCost(classes, used, measure) - measure.coin * keptCoins(tried);
      if (cost > atMost) continue;
      kept.push({ pattern, count: copies });
      break;
    }
  }
  return kept;
}

/** A plan that cuts what another leaves by the rule of thumb. */
export function withFirstFit(
  ground: SearchGround,
  planned: readonly Planned[],
): readonly Planned[] | undefined {
  const used = sheetsUsed(planned, ground.classes.length);
  const rest = ground.firstFit(
    demandLeft(ground.demand, planned),
    ground.classes.map((entry, g) => without(entry, used[g])),
  );
  return rest && [...planned, ...rest];
}
