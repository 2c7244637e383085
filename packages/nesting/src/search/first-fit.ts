import { classCost, money } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { CutBox, CuttingRules } from '../pattern/cutting-rules.js';
import { legal } from '../pattern/legal.js';
import type { Part, Pattern } from '../pattern/part.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import { available } from './class-supplies.js';
import type { Planned } from './planned.js';
import { type Filled, StripRule } from './strip-rule.js';

/** Of thousands of offcuts, so many of the largest that are left are looked at. */
const MOST_CLASSES = 400;
/** The same once time is over. */
const FEW_CLASSES = 100;
/** So many patterns are priced whether there is time or not, for there must be some plan. */
const PRICED_ANYWAY = 4;

/**
 * A plan by the rule of thumb, as a start for the search and a ceiling over it:
 * fill sheets with strips by descending width (see `strip-rule.ts`); take stock
 * that costs nothing first, then the sheet that gives most metal used for its cost
 * (first fit decreasing height on strips, as in Coffman, Garey, Johnson and Tarjan
 * 1980, "Performance bounds for level-oriented two-dimensional packing algorithms").
 * Where the shear's limits forbid what the rule of thumb does, a pattern with most
 * metal used takes its place.
 * @param pricerFor finds a pattern wherever there is one
 * @param over whether time is over: true looks at fewer offcuts, and gives up pricing patterns again and again
 * @returns undefined where the stock ran out before the demand was met, or it gave up
 */
export function firstFit(
  classes: readonly StockClass[],
  boxes: readonly CutBox[],
  demand: readonly number[],
  rules: CuttingRules,
  pricerFor: (demand: readonly number[]) => PatternPricer,
  over: () => boolean,
): readonly Planned[] | undefined {
  const wanted = [...demand];
  const used = classes.map(() => 0);
  const planned: Planned[] = [];
  const bySize = byDescendingArea(classes);
  let pricings = 0;
  const strips = classes.map(({ box }, g) =>
    box.firstCuts.map((cuts) => {
      const rule = new StripRule(box, cuts, rules.limits);
      return new LastFilled(rule, (part) =>
        legal(part, boxes[g], rules) ? patternOf(part, g, boxes[g], rules) : undefined,
      );
    }),
  );
  while (wanted.some((quantity) => quantity > 0)) {
    let best: { pattern: Pattern; rank: number } | undefined;
    const offer = (pattern: Pattern | undefined) => {
      if (pattern === undefined) return;
      const rank = rankOf(pattern, classes, used, wanted, rules);
      if (rank > 0 && (best === undefined || rank > best.rank)) best = { pattern, rank };
    };
    const most = classes.length > FEW_CLASSES && over() ? FEW_CLASSES : MOST_CLASSES;
    for (const g of largestLeft(classes, bySize, used, most)) {
      for (const filled of strips[g]) offer(filled.pattern(wanted));
    }
    if (best === undefined) {
      if (++pricings > PRICED_ANYWAY && over()) return undefined;
      const areas = rules.pieces.map((piece, i) =>
        wanted[i] > 0 ? piece.length * piece.width : 0,
      );
      const priced = pricerFor(wanted).price(areas, 0);
      classes.forEach((entry, g) => {
        if (used[g] >= available(entry)) return;
        // What is left over was worth nothing to the pricer.
        for (const { pattern } of priced.patterns(g)) {
          offer(patternOf(pattern.part, g, boxes[g], rules));
        }
      });
    }
    if (best === undefined) return undefined;
    const { pattern } = best;
    const times = sameAgain(classes[pattern.stockClass], used[pattern.stockClass], pattern, wanted);
    for (const [piece, copies] of pattern.counts) {
      wanted[piece] = Math.max(0, wanted[piece] - copies * times);
    }
    used[pattern.stockClass] += times;
    planned.push({ pattern, count: times });
  }
  return planned;
}

/** The classes of which there is some left: so many of the largest; ascending. */
function largestLeft(
  classes: readonly StockClass[],
  bySize: readonly number[],
  used: readonly number[],
  most: number,
): readonly number[] {
  const left: number[] = [];
  for (const g of bySize) {
    if (used[g] < available(classes[g])) left.push(g);
    if (left.length === most) break;
  }
  return left.sort((a, b) => a - b);
}

function byDescendingArea(classes: readonly StockClass[]): readonly number[] {
  const areas = classes.map(({ box }) => box.length * box.width);
  return [...classes.keys()].sort((a, b) => areas[b] - areas[a] || a - b);
}

/**
 * What a box was filled with last, which is not made anew as long as it would be the same: of thousands of
 * offcuts, each sheet that is planned changes but a few. What is wanted only grows less.
 */
class LastFilled {
  readonly #rule: StripRule;
  readonly #patternOf: (part: Part) => Pattern | undefined;
  #last: { readonly inHand: Filled['inHand']; readonly pattern: Pattern | undefined } | undefined;

  /** @param patternOf a part; undefined where it may not be cut */
  constructor(rule: StripRule, patternOf: (part: Part) => Pattern | undefined) {
    this.#rule = rule;
    this.#patternOf = patternOf;
  }

  pattern(wanted: readonly number[]): Pattern | undefined {
    for (const [piece, copies] of this.#last?.inHand ?? []) {
      if (wanted[piece] >= copies) continue;
      this.#last = undefined;
      break;
    }
    if (this.#last === undefined) {
      const { part, inHand } = this.#rule.fill(wanted);
      this.#last = { inHand, pattern: part && this.#patternOf(part) };
    }
    return this.#last.pattern;
  }
}

/** Free stock ranks above all priced stock, fuller sheets above emptier ones; 0 where nothing is gained. */
function rankOf(
  pattern: Pattern,
  classes: readonly StockClass[],
  used: readonly number[],
  wanted: readonly number[],
  { pieces }: CuttingRules,
): number {
  const entry = classes[pattern.stockClass];
  const before = classCost(entry, used[pattern.stockClass], money);
  const cost = classCost(entry, used[pattern.stockClass] + 1, money) - before;
  if (!Number.isFinite(cost)) return 0;
  const area = pattern.counts.reduce(
    (sum, [piece, copies]) =>
      sum + Math.min(copies, wanted[piece]) * pieces[piece].length * pieces[piece].width,
    0,
  );
  if (area === 0) return 0;
  return cost <= 0 ? 2 + area / (entry.box.length * entry.box.width) : area / cost / 1e12;
}

/** How often the same pattern serves again: while it is wanted and the supply's price does not change. */
function sameAgain(
  entry: StockClass,
  used: number,
  { counts }: Pattern,
  wanted: readonly number[],
): number {
  let left = used;
  let supply = 0;
  for (const { count } of entry.supplies) {
    if (left < count) {
      supply = count - left;
      break;
    }
    left -= count;
  }
  const wants = counts.map(([piece, copies]) => Math.floor(wanted[piece] / copies));
  return Math.max(1, Math.min(supply, ...wants));
}
