import type { CuttingProblem } from '../problem.js';
import type { ExactBound } from './exact-bound.js';
import { type ListingBudget, listFillings } from './fillings.js';
import type { SheetPattern, StripPattern } from './patterns.js';
import { type Pricing, stripItems } from './pricing.js';
import type { Faces } from './strip-families.js';

export interface PatternsWithinGap {
  readonly strips: readonly StripPattern[];
  readonly sheets: readonly SheetPattern[];
}

/** Steps of search for each pattern that may be listed. */
const STEPS_PER_PATTERN = 200;

/**
 * Every strip pattern and sheet pattern that can stand in a plan whose cost is
 * below the bound plus the gap. At the bound's multipliers each pattern falls
 * short of what its strip or sheet could be worth by some amount, and the cost
 * of a plan is at least the bound plus all that its patterns fall short by.
 *
 * It is enough to list patterns to which nothing can be added, and strips that
 * hold a piece of their full width: any plan can be turned into one of those,
 * with pieces to spare, at the same cost.
 * @param gap in units of 1/scale of the cost, at least 0
 * @returns undefined where there are more than `most` patterns, or too many to look through
 */
export function patternsWithinGap(
  problem: CuttingProblem,
  faces: Faces,
  pricing: Pricing,
  bound: ExactBound,
  gap: number,
  most: number,
): PatternsWithinGap | undefined {
  const budget: ListingBudget = { fillings: most, steps: most * STEPS_PER_PATTERN };
  const priced = pricing.price(bound.multipliers.pieces);
  const strips: StripPattern[] = [];
  for (const [index, family] of faces.families.entries()) {
    for (const [width, fitting] of family.fitting.entries()) {
      const lays = family.lays.slice(0, fitting);
      const listed = listFillings(
        {
          capacity: family.length,
          items: lays.map((lay) => ({
            size: lay.along,
            most: problem.pieces[lay.piece].quantity,
          })),
          values: lays.map((lay) => bound.multipliers.pieces[lay.piece]),
          least: priced.stripWorth[index][width] - gap,
          required: width === 0 ? 0 : family.fitting[width - 1],
        },
        budget,
      );
      if (listed === undefined) return undefined;
      strips.push(...listed.map((filling) => ({ family: index, width, lays: filling })));
    }
  }
  const sheets: SheetPattern[] = [];
  for (const [index, face] of faces.faces.entries()) {
    const listed = listFillings(
      {
        capacity: face.breadth,
        items: stripItems(problem, faces, face),
        values: [...priced.stripWorth[face.family]],
        least: bound.classCost[face.stockClass] - gap,
        required: 0,
      },
      budget,
    );
    if (listed === undefined) return undefined;
    sheets.push(...listed.map((filling) => ({ face: index, widths: filling })));
  }
  return { strips, sheets };
}

/**
 * As many of these patterns as can be had by narrowing the gap: those that a good
 * plan is most likely to contain. Proves nothing.
 */
export function likelyPatterns(
  problem: CuttingProblem,
  faces: Faces,
  pricing: Pricing,
  bound: ExactBound,
  gap: number,
  most: number,
): PatternsWithinGap {
  for (let part = gap; part >= 1; part = Math.floor(part / 2)) {
    const listed = patternsWithinGap(problem, faces, pricing, bound, part, most);
    if (listed !== undefined) return listed;
  }
  return { strips: [], sheets: [] };
}
