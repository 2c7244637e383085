import type { Deadline } from '../deadline.js';
import { Appraiser } from '../layout/appraise.js';
import { merged } from '../layout/drop-surplus.js';
import { across, other } from '../pattern/cut-up.js';
import type { CuttingRules, FillBox } from '../pattern/cutting-rules.js';
import type { Cutting, PatternCount } from '../pattern/pattern-count.js';
import { patternOf } from '../pattern/pattern-of.js';
import type { Rolling, Weights } from '../problem.js';
import { seededRandom } from '../random.js';
import { effortToFill } from '../spares/fill-room.js';
import { bandsAlike } from './bands-alike.js';
import { cutAnew, wholeRoom } from './cut-anew.js';
import { HandlingCount } from './handling.js';
import { packAlike } from './pack-alike.js';
import { shareOut } from './share-out.js';
import { type Divided, slicePool } from './slice-pool.js';

const NEVER: Deadline = { left: () => Number.POSITIVE_INFINITY };

/** Sheets are rearranged no longer than this: tries, tries in vain, and slices looked at. */
const MOST_TRIES = 200;
const MOST_IN_VAIN = 50;
const MOST_SLICES = 200_000;
/** So many different sheets may be packed anew together. */
const MOST_AT_ONCE = 12;
/** Sheets are cut anew so often, or as often as this effort allows at some fillings a time. */
const FILLINGS = 4;
const MOST_FRESH = 200;
const MOST_EFFORT = 1.2e9;

/**
 * Among plans that cut the same pieces from the same sheets and cost no more,
 * finds one that is less trouble: fewer different layouts, fewer settings of the
 * gauge, fewer cuts. Slices change places between sheets of a class, pieces
 * between strips of a width; then some sheets are cut anew. The best of many
 * tries is kept. The same for the same input.
 * @param sheets legal patterns, none twice
 * @param boxes one for each stock class
 * @param deadline when it is over, the best so far is taken
 * @returns legal patterns, none twice; never more trouble than before
 */
export function tidy(
  sheets: readonly PatternCount[],
  boxes: readonly FillBox[],
  rules: CuttingRules,
  weights?: Weights,
  deadline: Deadline = NEVER,
): readonly PatternCount[] {
  const handling = new HandlingCount(boxes, rules, weights);
  return grouped(sheets, ({ pattern }) => `${pattern.stockClass}`).flatMap((sheets) => {
    if (sheets.length === 1) return sheets;
    const { stockClass } = sheets[0].pattern;
    const judge = new Judge(stockClass, boxes[stockClass], rules, handling, deadline);
    const rearranged = rearrangedByWay(sheets, judge);
    const fresh = freshlyCut(rearranged, judge);
    return fresh === rearranged ? fresh : rearrangedByWay(fresh, judge);
  });
}

/** Judges plans for the sheets of one class. */
class Judge {
  readonly #appraiser: Appraiser;

  constructor(
    readonly stockClass: number,
    readonly box: FillBox,
    readonly rules: CuttingRules,
    readonly handling: HandlingCount,
    readonly deadline: Deadline,
  ) {
    this.#appraiser = new Appraiser(box, rules);
  }

  /**
   * Sheets divided so, if that is a plan to put in the place of another: legal,
   * worth no less in the rack, and less trouble.
   */
  better(
    divided: readonly Divided[],
    runs: Rolling,
    others: readonly PatternCount[],
    before: readonly PatternCount[],
  ): readonly PatternCount[] | undefined {
    const { stockClass, box, rules, handling } = this;
    const cut: readonly PatternCount<Cutting>[] = divided.map(({ slices, count }) => ({
      pattern: { stockClass, part: { kind: 'split', cuts: runs, parts: slices } },
      count,
    }));
    // Most are as much trouble, which is soon told.
    const trouble = handling.score(merged<Cutting>([...others, ...cut]));
    if (trouble >= handling.score(before)) return undefined;
    if (!cut.every(({ pattern }) => this.#appraiser.appraise(pattern.part).legal)) return undefined;
    const plan = merged([
      ...others,
      ...cut.map(({ pattern: { part }, count }) => ({
        pattern: patternOf(part, stockClass, box, rules),
        count,
      })),
    ]);
    // An empty sheet would not be cut at all: that is another plan, and its cost another.
    if (plan.some(({ pattern }) => pattern.counts.length === 0)) return undefined;
    return keptOf(plan) < keptOf(before) ? undefined : plan;
  }
}

function keptOf(sheets: readonly PatternCount[]): number {
  return sheets.reduce((sum, { pattern, count }) => sum + pattern.kept * count, 0);
}

/** Slices and pieces change places among sheets whose first cuts run the same way. */
function rearrangedByWay(sheets: readonly PatternCount[], judge: Judge): readonly PatternCount[] {
  const way = ({ pattern: { part } }: PatternCount) => (part.kind === 'lay' ? '' : part.cuts);
  return grouped(sheets, way).flatMap((sheets) => {
    const { part } = sheets[0].pattern;
    return part.kind === 'lay' || sheets.length === 1
      ? sheets
      : rearranged(sheets, part.cuts, judge);
  });
}

function rearranged(
  sheets: readonly PatternCount[],
  runs: Rolling,
  judge: Judge,
): readonly PatternCount[] {
  const { box, rules } = judge;
  const depth = across(box, runs);
  const breadth = across(box, other(runs));
  let best = sheets;
  let inVain = 0;
  let looked = 0;
  for (let seed = 0; seed < MOST_TRIES; seed++) {
    if (inVain++ > MOST_IN_VAIN || looked > MOST_SLICES || best.length === 1) break;
    if (judge.deadline.left() <= 0) break;
    const random = seededRandom(seed);
    // From the best so far or from the beginning: each leads to plans the other does not.
    const all = random() < 0.5 ? best : sheets;
    const order = shuffled(all, random);
    const some = random() < 0.3 ? all.length : 2 + Math.floor(random() * (MOST_AT_ONCE - 1));
    const from = dividedOf(order.slice(0, some));
    looked += from.reduce((sum, { slices }) => sum + slices.length, 0);
    const alike = random() < 0.6;
    const bands = () =>
      alike ? bandsAlike(from, breadth, other(runs), rules, seededRandom(seed)) : slicePool(from);
    const pack = from.length <= MOST_AT_ONCE && random() < 0.5;
    const divided =
      (pack ? packAlike(from, bands(), depth, rules.limits, random) : undefined) ??
      shareOut(from, bands(), random);
    const plan = judge.better(divided, runs, order.slice(some), best);
    if (plan === undefined) continue;
    best = plan;
    inVain = 0;
  }
  return best;
}

/** A few sheets at a time are cut in another way. */
function freshlyCut(sheets: readonly PatternCount[], judge: Judge): readonly PatternCount[] {
  const { box, rules } = judge;
  const ways = rules.firstCut === 'either' ? (['along', 'across'] as const) : [rules.firstCut];
  const effort = effortToFill(wholeRoom(ways[0], box, rules), box.lays.length, rules.limits);
  const tries = Math.min(MOST_FRESH, Math.floor(MOST_EFFORT / (FILLINGS * effort)));
  let best = sheets;
  for (let seed = 0; seed < tries && best.length > 1; seed++) {
    if (judge.deadline.left() <= 0) break;
    const random = seededRandom(seed);
    const some = 2 + Math.floor(random() * random() * Math.min(4, best.length - 1));
    const order = shuffled(best, random);
    const runs = ways[Math.floor(random() * ways.length)];
    const divided = cutAnew(order.slice(0, some), runs, box, rules, random);
    best = (divided && judge.better(divided, runs, order.slice(some), best)) ?? best;
  }
  return best;
}

function shuffled<T>(items: readonly T[], random: () => number): readonly T[] {
  return items
    .map((item) => ({ item, rank: random() }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ item }) => item);
}

function dividedOf(sheets: readonly PatternCount[]): readonly Divided[] {
  return sheets.map(({ pattern: { part }, count }) => ({
    slices: part.kind === 'lay' ? [] : part.parts,
    count,
  }));
}

function grouped<T>(items: readonly T[], key: (item: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(key(item)) ?? [];
    groups.set(key(item), group);
    group.push(item);
  }
  return [...groups.values()];
}
