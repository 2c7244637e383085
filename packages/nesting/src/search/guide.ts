import type { LinearResult } from '../master/column-generation.js';
import type { Pattern } from '../pattern/part.js';
import type { LikelyPatterns } from './cover-by-settling.js';
import type { SearchGround } from './ground.js';
import { leastFirst, reducedCosts } from './reduced-costs.js';
import type { RefillGuide } from './refill.js';

/** Bands and sheet patterns of the linear plan that local search starts from. */
const BANDS = 800;
const SHEETS = 200;
/** What going without a piece counts, in what the linear plan pays for it. */
const LOSS = 2;

/** What the linear plan of the whole problem tells a local search. */
export function guideOf(ground: SearchGround, root: LinearResult): RefillGuide {
  const values = Array.from(root.bound.multipliers.pieces, (value) => value / ground.scale);
  const most = Math.max(1 / ground.scale, ...values);
  const duals = root.answer?.duals;
  return {
    weights: values.map((value) => 1 + Math.round((1000 * value) / most)),
    // Pieces that cost nothing in the linear plan are not to be left out either.
    losses: values.map((value) => LOSS * value + most / 1000),
    likely: likelyPatterns(ground, root),
    waste: ({ counts, stockClass, kept }: Pattern) =>
      counts.reduce(
        (sum, [piece, copies]) => sum - values[piece] * copies,
        (duals?.classes[stockClass] ?? 0) - kept,
      ),
  };
}

function likelyPatterns({ book }: SearchGround, { answer }: LinearResult): LikelyPatterns {
  const duals = answer?.duals;
  if (duals === undefined) return { book, bands: [], sheets: [] };
  const costs = reducedCosts(book, duals, (_, copies) => copies);
  return {
    book,
    bands: leastFirst(costs.bands, BANDS),
    sheets: leastFirst(costs.sheets, SHEETS),
  };
}
