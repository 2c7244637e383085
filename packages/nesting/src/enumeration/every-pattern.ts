import type { Box } from '../pattern/box.js';
import type { CuttingRules, FillBox } from '../pattern/cutting-rules.js';
import { keptValue } from '../pattern/kept-value.js';
import type { Part, Pattern } from '../pattern/part.js';
import { patternOf } from '../pattern/pattern-of.js';
import { Combinations } from './combinations.js';
import { type Allowance, type EnumerationRequest, TooMuch } from './enumeration.js';
import { Frontier } from './frontier.js';
import { partOf, type Yield } from './yield.js';
import { yieldsFreely } from './yields-freely.js';
import { yieldsInStages } from './yields-in-stages.js';

/** Steps of the enumeration, over all boxes. */
const MOST_STEPS = 4_000_000;
/** Combinations of pieces on one box. */
const MOST_COMBINATIONS = 600;
/** Ticks around half a box: rectangles within it are looked into at every tick. */
const MOST_TICKS = 400;

/**
 * Lists the patterns of every box of a small problem that no other matches in
 * pieces and in kept remnants, with no more of a piece than is wanted: the best
 * plan is made of some of them, whatever the limits of the shear and the value of
 * remnants. Every cut at every tick is tried.
 * @param boxes one for each stock class
 * @param demand copies wanted of each piece
 * @param over asked now and then; true gives up
 * @returns undefined where the problem is not small
 */
export function everyPattern(
  boxes: readonly (FillBox & Box)[],
  demand: readonly number[],
  rules: CuttingRules,
  over: () => boolean,
): readonly Pattern[] | undefined {
  const left: Allowance = { steps: MOST_STEPS, over };
  try {
    return boxes.flatMap((box, stockClass) =>
      yieldsOf(box, demand, rules, left)
        .filter(({ pieces }) => pieces > 0)
        .map((found) => {
          const part = startingRight(partOf(found, demand), box, rules);
          return patternOf(part, stockClass, box, rules);
        }),
    );
  } catch (error) {
    if (error instanceof TooMuch) return undefined;
    throw error;
  }
}

function yieldsOf(
  box: FillBox & Box,
  demand: readonly number[],
  rules: CuttingRules,
  left: Allowance,
): readonly Yield[] {
  const most = mostOf(box, demand);
  const size = most.reduce((product, copies) => product * (copies + 1), 1);
  if (size > MOST_COMBINATIONS || box.length + box.width > MOST_TICKS) throw new TooMuch();
  const combinations = new Combinations(most);
  const keep = (length: number, width: number) => keptValue(length, width, box.keep);
  const request: EnumerationRequest = { box, rules, combinations, keep, left };
  const { stages } = rules;
  if (stages === 'free') return yieldsFreely(request);
  const frontier = new Frontier(combinations);
  for (const runs of box.firstCuts) {
    for (const { pieces, kept, way } of yieldsInStages(request, runs, stages)) {
      frontier.add(pieces, kept, way);
    }
  }
  return frontier.best();
}

/** Copies of each piece that are wanted and that the box has metal for. */
function mostOf({ length, width, lays }: Box, demand: readonly number[]): readonly number[] {
  return demand.map((quantity, piece) => {
    const lay = lays.find((lay) => lay.piece === piece);
    if (lay === undefined) return 0;
    return Math.min(quantity, Math.floor((length * width) / (lay.length * lay.width)));
  });
}

/** Free cuts that begin the other way than the first cuts must run are within one band of these. */
function startingRight(part: Part, box: Box, { firstCut }: CuttingRules): Part {
  if (part.kind === 'lay' || firstCut === 'either' || part.cuts === firstCut) return part;
  const extent = firstCut === 'along' ? box.width : box.length;
  return { kind: 'split', cuts: firstCut, parts: [{ extent, part }] };
}
