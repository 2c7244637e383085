import { dropSurplus } from './layout/drop-surplus.js';
import type { CuttingRules, FillBox } from './pattern/cutting-rules.js';
import type { Pattern } from './pattern/part.js';
import { patternOf } from './pattern/pattern-of.js';
import type { Planned } from './search/planned.js';
import { addSpares } from './spares/add-spares.js';

/** A pattern without the pieces beyond the demand, others that are wanted in their place. */
export function proper(
  pattern: Pattern,
  demand: readonly number[],
  boxes: readonly FillBox[],
  rules: CuttingRules,
): Pattern {
  if (pattern.counts.every(([piece, copies]) => copies <= demand[piece])) return pattern;
  const wanted = demand.map(() => 0);
  for (const [piece, copies] of pattern.counts) wanted[piece] = Math.min(copies, demand[piece]);
  const bare = dropSurplus([{ pattern, count: 1 }], wanted, boxes, rules);
  const others = demand.map((quantity, piece) => quantity - wanted[piece]);
  const [full] = addSpares(bare, others, boxes, rules).sheets;
  return full?.pattern ?? pattern;
}

/** The plan as its patterns cut exactly what is wanted. */
export function withoutSurplus(
  planned: readonly Planned[],
  demand: readonly number[],
  boxes: readonly FillBox[],
  rules: CuttingRules,
): readonly Planned[] {
  const exact = planned.map(({ pattern, count }) => ({
    pattern: patternOf(pattern.part, pattern.stockClass, boxes[pattern.stockClass], rules),
    count,
  }));
  return dropSurplus(exact, demand, boxes, rules);
}
