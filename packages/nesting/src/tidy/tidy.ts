import { Appraiser } from '../layout/appraise.js';
import { merged } from '../layout/drop-surplus.js';
import { across, other } from '../pattern/cut-up.js';
import type { CutBox, CuttingRules } from '../pattern/cutting-rules.js';
import type { PatternCount } from '../pattern/pattern-count.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { Rolling, Weights } from '../problem.js';
import { seededRandom } from '../random.js';
import { HandlingCount } from './handling.js';
import { packAlike } from './pack-alike.js';
import { shareOut } from './share-out.js';
import { type Divided, type Lot, slicePool } from './slice-pool.js';

/** Tries are given up after so many, or when they have looked at so many slices together. */
const MOST_TRIES = 200;
const MOST_SLICES = 400_000;

/**
 * Among plans that cut the same pieces from the same sheets for the same cost,
 * finds one that is less trouble: fewer different layouts, fewer settings of the
 * gauge, fewer cuts. Slices change places between sheets of a class, pieces
 * between strips of a width, in many tries of which the best is kept. The same
 * for the same input.
 * @param sheets legal patterns, none twice
 * @param boxes one for each stock class
 * @returns patterns of which none comes twice; never more trouble than before
 */
export function tidy(
  sheets: readonly PatternCount[],
  boxes: readonly CutBox[],
  rules: CuttingRules,
  weights?: Weights,
): readonly PatternCount[] {
  const handling = new HandlingCount(boxes, rules, weights);
  return familiesOf(sheets).flatMap((family) => tidyFamily(family, boxes, rules, handling));
}

/** Sheets between which slices can change places. */
interface Family {
  readonly stockClass: number;
  /** How the first cuts run; none for sheets that hold one piece. */
  readonly runs: Rolling | undefined;
  readonly sheets: readonly PatternCount[];
}

function familiesOf(sheets: readonly PatternCount[]): readonly Family[] {
  const families = new Map<string, Family>();
  for (const sheet of sheets) {
    const { part, stockClass } = sheet.pattern;
    const runs = part.kind === 'lay' ? undefined : part.cuts;
    const key = `${stockClass} ${runs}`;
    const before = families.get(key)?.sheets ?? [];
    families.set(key, { stockClass, runs, sheets: [...before, sheet] });
  }
  return [...families.values()];
}

function tidyFamily(
  { stockClass, runs, sheets }: Family,
  boxes: readonly CutBox[],
  rules: CuttingRules,
  handling: HandlingCount,
): readonly PatternCount[] {
  if (runs === undefined || sheets.length === 1) return sheets;
  const box = boxes[stockClass];
  const appraiser = new Appraiser(box, rules);
  const kept = (of: readonly PatternCount[]) =>
    of.reduce((sum, { pattern, count }) => sum + pattern.kept * count, 0);
  const keptBefore = kept(sheets);
  const depth = across(box, runs);
  const breadth = across(box, other(runs));

  let best = sheets;
  let bestScore = handling.score(best);
  let looked = 0;
  for (let seed = 0; seed < MOST_TRIES && looked < MOST_SLICES; seed++) {
    const random = seededRandom(seed);
    // From the best so far or from the beginning: each leads to plans the other does not.
    const from = dividedOf(random() < 0.5 ? best : sheets);
    looked += from.reduce((sum, { slices }) => sum + slices.length, 0);
    const alike = random() < 0.6;
    const bands = () =>
      alike ? bandsAlike(from, breadth, other(runs), rules, seededRandom(seed)) : slicePool(from);
    const divided =
      (random() < 0.5 ? packAlike(from, bands(), depth, rules.limits, random) : undefined) ??
      shareOut(from, bands(), random);
    const patterns = divided.map(({ slices, count }) => ({
      part: { kind: 'split', cuts: runs, parts: slices } as const,
      count,
    }));
    if (!patterns.every(({ part }) => appraiser.appraise(part).legal)) continue;
    const plan = merged(
      patterns.map(({ part, count }) => ({
        pattern: patternOf(part, stockClass, box, rules),
        count,
      })),
    );
    // An empty sheet would not be cut at all: that is another plan, and its cost another.
    if (kept(plan) !== keptBefore || plan.some(({ pattern }) => pattern.counts.length === 0)) {
      continue;
    }
    const score = handling.score(plan);
    if (score < bestScore) {
      best = plan;
      bestScore = score;
    }
  }
  return best;
}

function dividedOf(sheets: readonly PatternCount[]): readonly Divided[] {
  return sheets.map(({ pattern: { part }, count }) => ({
    slices: part.kind === 'lay' ? [] : part.parts,
    count,
  }));
}

/**
 * The bands of sheets, with what lies in those of equal extent shared out anew so
 * that more of them are alike.
 * @param runs how the cuts within bands run
 */
function bandsAlike(
  sheets: readonly Divided[],
  breadth: number,
  runs: Rolling,
  rules: CuttingRules,
  random: () => number,
): Lot[] {
  const byExtent = new Map<number, Divided[]>();
  const others: Divided[] = [];
  for (const { slices, count } of sheets) {
    for (const slice of slices) {
      const { extent, part } = slice;
      if (part.kind === 'lay' || part.cuts !== runs) {
        others.push({ slices: [slice], count });
        continue;
      }
      const bands = byExtent.get(extent) ?? [];
      bands.push({ slices: part.parts, count });
      byExtent.set(extent, bands);
    }
  }
  const renewed = [...byExtent].flatMap(([extent, bands]) => {
    const divided =
      (random() < 0.3
        ? packAlike(bands, slicePool(bands), breadth, rules.limits, random)
        : undefined) ?? shareOut(bands, slicePool(bands), random);
    return divided.map(({ slices, count }) => {
      const part = { kind: 'split', cuts: runs, parts: slices } as const;
      return { slices: [{ extent, part }], count };
    });
  });
  return slicePool([...renewed, ...others]);
}
