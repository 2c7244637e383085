import { DEFAULT_EFFORT, ROUGH_EFFORT } from './box-solver/effort.js';
import { RoughPricer } from './box-solver/rough-pricer.js';
import { shareEffort } from './box-solver/share-effort.js';
import { FreePricer } from './free-guillotine/free-pricer.js';
import { freeSolver } from './free-guillotine/free-solver.js';
import { forAllBoxes, largestBoxes } from './largest-boxes.js';
import type { Box } from './pattern/box.js';
import { type KeepValue, worthless } from './pattern/keep-value.js';
import { LazyPricer } from './pattern/lazy-pricer.js';
import type { Limits } from './pattern/limits.js';
import { MindfulPricer } from './pattern/mindful-pricer.js';
import type { PatternPricer, PricedPatterns } from './pattern/pattern-pricer.js';
import type { StripLister } from './pattern/strip-lister.js';
import type { KeepRule, Stages } from './problem.js';
import { ThreeStagePricer, threeStageSolver } from './three-stage/three-stage-pricer.js';
import type { TriedSizes } from './three-stage/whole-bands.js';
import { affordablePricer, boundingPricer } from './two-stage/affordable-pricers.js';
import type { TriedWidths } from './two-stage/strip-family.js';
import { stripLister } from './two-stage/strip-lists.js';
import { valuedTwoStagePricer } from './two-stage/valued-two-stage-pricer.js';

/** The pricers that suit a kind of cutting. */
export interface KindPricers {
  /** Prices all patterns of the kind, so that its worth makes a bound. */
  readonly exact: PatternPricer;
  /** For the whole demand, each takes longer than the one before and finds more; the last is the exact one. */
  readonly inTurn: readonly PatternPricer[];
  /** Where the exact one takes far longer than pieces alone would; undefined where it does not. */
  readonly rough: RoughPricing | undefined;
  /** Quick ones that find good patterns for so many of each piece. */
  readonly quick: (demand: readonly number[]) => PatternPricer;
  /**
   * Takes longer, but finds a pattern of what is wanted wherever the shear can cut one, as if remnants were
   * worth nothing.
   */
  readonly thorough: (demand: readonly number[]) => PatternPricer;
  /**
   * Lists strips of two-stage patterns, whatever the limits of the shear and the value of
   * remnants; undefined for other kinds of cutting, or where strips of every width are too many.
   */
  readonly strips: () => StripLister | undefined;
}

/** Pricing for bounds alone, see `RoughPricer`. */
export interface RoughPricing {
  readonly pricer: PatternPricer;
  /** What is kept of the one band that each of its patterns is. */
  readonly keptBeside: RoughPricer['keptBeside'];
  readonly whole: RoughPricer['whole'];
}

/** What the pricers of every kind work from. */
export interface PricerRequest {
  readonly boxes: readonly Box[];
  readonly demand: readonly number[];
  readonly limits: Limits;
  readonly rule: KeepRule | undefined;
  /** Values remnants as the rule does; undefined where none is worth anything. */
  readonly keep: KeepValue | undefined;
  /** Whether there is no time left: true leaves boxes bounded by their area, and without patterns. */
  readonly over: () => boolean;
}

/** Up to so many rectangles of whole ticks of all boxes, free cuts are priced at every tick in hundredths of a second. */
const FEW_CELLS = 300_000;
/** Up to so many kinds of pieces, patterns are priced quickly enough to be mindful of demand. */
const FEW_KINDS = 14;

/**
 * Chooses the pricers. Two-stage patterns are patterns of every kind, cheap to
 * price and mindful of demand, so they serve all kinds as columns; patterns with
 * more stages are priced besides.
 */
export function kindPricers(stages: Stages, request: PricerRequest): KindPricers {
  const boxes = largestBoxes(request.boxes);
  const pricers = pricersOf(stages, { ...request, boxes });
  if (boxes === request.boxes) return pricers;
  const exact = forAllBoxes(pricers.exact, request.boxes, boxes, request.rule);
  // What is listed must be all there is.
  const inTurn = [...pricers.inTurn.slice(0, -1), exact];
  const { rough } = pricers;
  if (rough === undefined) return { ...pricers, exact, inTurn, strips: () => undefined };
  const pricer = forAllBoxes(rough.pricer, request.boxes, boxes, request.rule);
  return { ...pricers, exact, inTurn, rough: { ...rough, pricer }, strips: () => undefined };
}

function pricersOf(stages: Stages, request: PricerRequest): KindPricers {
  return stages === 2 ? twoStagePricers(request) : moreStagesPricers(stages, request);
}

function twoStagePricers(request: PricerRequest): KindPricers {
  const { boxes, demand, limits, rule, keep } = request;
  const whole = new LazyPricer(() =>
    keep === undefined
      ? boundingPricer(wantedOnly(boxes, demand), demand, limits)
      : stripsFor(request, demand),
  );
  const strips = once(() => stripLister(boxes, demand, limits, keep ?? worthless));
  const exact =
    keep === undefined || rule === undefined
      ? whole
      : new LazyPricer(() =>
          valuedTwoStagePricer(boxes, demand, limits, keep, rule, strips, whole),
        );
  const quick = (wanted: readonly number[]) =>
    wanted === demand ? whole : stripsFor(request, wanted);
  const inTurn = exact === whole ? [exact] : [whole, exact];
  const thorough = (wanted: readonly number[]) => bareStripsFor(request, wanted);
  return { exact, inTurn, rough: undefined, quick, thorough, strips };
}

function moreStagesPricers(stages: Stages, request: PricerRequest): KindPricers {
  const { quick, ...pricers } = boxPricers(stages, request, request.over, 'few');
  // There must be some plan, however late it is.
  const whenever = boxPricers(stages, request, () => false, 'every');
  const thorough = (wanted: readonly number[]) =>
    new BothPricers(bareStripsFor(request, wanted), whenever.quick(wanted));
  return { ...pricers, quick, thorough, strips: () => undefined };
}

/**
 * Pricers of three stages or free cutting; the quick ones look at strips besides.
 * @param sizes that the quick ones try where every tick matters: few are much quicker than all
 */
function boxPricers(
  stages: Stages,
  request: PricerRequest,
  over: () => boolean,
  sizes: TriedSizes,
): Pick<KindPricers, 'exact' | 'inTurn' | 'rough' | 'quick'> {
  const { boxes, demand, limits, keep } = request;
  const rules = boxes.map(() => request.rule);
  const three = (left: readonly Box[], tried = sizes) =>
    new ThreeStagePricer(left, limits, rules, DEFAULT_EFFORT, over, tried);
  const free = (left: readonly Box[]) => new FreePricer(left, limits, rules, DEFAULT_EFFORT, over);
  const exact = new LazyPricer(() => (stages === 3 ? three(boxes, 'every') : free(boxes)));
  const alike =
    stages === 3 && (sizes === 'every' || (limits.narrowest <= 1 && request.rule === undefined));
  const mostThree = alike ? exact : new LazyPricer(() => three(boxes));
  const strips = new LazyPricer(() =>
    stripsFor(request, demand, keep === undefined ? 'needed' : 'few'),
  );
  const all = new BothPricers(strips, mostThree);
  const cells = boxes.reduce((sum, { length, width }) => sum + length * width, 0);
  const longToPrice = keep !== undefined && cells > FEW_CELLS;
  const quick = (wanted: readonly number[]) => {
    if (wanted === demand) return all;
    // Fewer kinds of pieces make fewer places to cut at.
    const kinds = wanted.filter((count) => count > 0).length;
    const left = wantedOnly(boxes, wanted);
    const mostly = kinds <= wanted.length / 2 ? three(left) : mostThree;
    if (kinds > FEW_KINDS) return new BothPricers(stripsFor(request, wanted), mostly);
    const mindful = new MindfulPricer(mostly, wanted);
    if (stages === 3 || longToPrice) return new BothPricers(stripsFor(request, wanted), mindful);
    const freely = new MindfulPricer(free(left), wanted);
    return new BothPricers(stripsFor(request, wanted), new BothPricers(mindful, freely));
  };
  if (keep === undefined || request.rule === undefined) {
    return { exact, inTurn: [all, exact], rough: undefined, quick };
  }
  const rough = roughPricing(stages, request, request.rule, over);
  return { exact, inTurn: [strips, all, exact], rough, quick };
}

function roughPricing(
  stages: Stages,
  { boxes, limits }: PricerRequest,
  rule: KeepRule,
  over: () => boolean,
): RoughPricing {
  const none = boxes.map(() => undefined);
  const effort = shareEffort(boxes, limits, none, ROUGH_EFFORT);
  const solver = stages === 3 ? threeStageSolver : freeSolver;
  const pricer = new RoughPricer(
    boxes,
    limits,
    rule,
    (box) => solver(box, limits, undefined, effort),
    over,
  );
  return {
    pricer,
    keptBeside: (part, length, width) => pricer.keptBeside(part, length, width),
    whole: (stockClass, part) => pricer.whole(stockClass, part),
  };
}

function stripsFor(
  { boxes, limits, keep }: PricerRequest,
  wanted: readonly number[],
  tried: TriedWidths = 'few',
): PatternPricer {
  return affordablePricer(wantedOnly(boxes, wanted), wanted, limits, keep, tried);
}

/** The same as if remnants were worth nothing. */
function bareStripsFor({ boxes, limits }: PricerRequest, wanted: readonly number[]): PatternPricer {
  return affordablePricer(wantedOnly(boxes, wanted), wanted, limits, undefined, 'needed');
}

/** Pieces that are not wanted would only make more widths to try. */
function wantedOnly(boxes: readonly Box[], wanted: readonly number[]): readonly Box[] {
  if (wanted.every((count) => count > 0)) return boxes;
  return boxes.map((box) => ({ ...box, lays: box.lays.filter((lay) => wanted[lay.piece] > 0) }));
}

/** Makes something when it is first asked for, and but once. */
function once<T>(make: () => T): () => T {
  let made: readonly [T] | undefined;
  return () => {
    made ??= [make()];
    return made[0];
  };
}

/** Offers the patterns of two pricers. */
class BothPricers implements PatternPricer {
  readonly #one: PatternPricer;
  readonly #other: PatternPricer;

  constructor(one: PatternPricer, other: PatternPricer) {
    this.#one = one;
    this.#other = other;
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const one = this.#one.price(values, coin);
    const other = this.#other.price(values, coin);
    return {
      worth: one.worth.map((worth, box) => Math.max(worth, other.worth[box])),
      patterns: (box) => [...one.patterns(box), ...other.patterns(box)],
      bands: () => [...(one.bands?.() ?? []), ...(other.bands?.() ?? [])],
    };
  }
}
