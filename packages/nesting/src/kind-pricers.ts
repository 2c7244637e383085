import { DEFAULT_EFFORT } from './box-solver/effort.js';
import { FreePricer } from './free-guillotine/free-pricer.js';
import { forAllBoxes, largestBoxes } from './largest-boxes.js';
import type { Box } from './pattern/box.js';
import { type KeepValue, worthless } from './pattern/keep-value.js';
import { LazyPricer } from './pattern/lazy-pricer.js';
import type { Limits } from './pattern/limits.js';
import { MindfulPricer } from './pattern/mindful-pricer.js';
import type { PatternPricer, PricedPatterns } from './pattern/pattern-pricer.js';
import type { StripLister } from './pattern/strip-lister.js';
import type { KeepRule, Stages } from './problem.js';
import { ThreeStagePricer } from './three-stage/three-stage-pricer.js';
import type { TriedHeights } from './three-stage/whole-bands.js';
import { affordablePricer, boundingPricer } from './two-stage/affordable-pricers.js';
import type { TriedWidths } from './two-stage/strip-family.js';
import { stripLister } from './two-stage/strip-lists.js';
import { valuedTwoStagePricer } from './two-stage/valued-two-stage-pricer.js';

/** The pricers that suit a kind of cutting. */
export interface KindPricers {
  /** Prices all patterns of the kind, so that its worth makes a bound. */
  readonly exact: PatternPricer;
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
  return { ...pricers, exact, strips: () => undefined };
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
  return { exact, quick, thorough: (wanted) => bareStripsFor(request, wanted), strips };
}

function moreStagesPricers(stages: Stages, request: PricerRequest): KindPricers {
  const { exact, quick } = boxPricers(stages, request, request.over, 'few');
  // There must be some plan, however late it is.
  const whenever = boxPricers(stages, request, () => false, 'every');
  const thorough = (wanted: readonly number[]) =>
    new BothPricers(bareStripsFor(request, wanted), whenever.quick(wanted));
  return { exact, quick, thorough, strips: () => undefined };
}

/**
 * Pricers of three stages or free cutting; the quick ones look at strips besides.
 * @param heights of bands that the quick ones try where every tick matters: few are much quicker than all
 */
function boxPricers(
  stages: Stages,
  request: PricerRequest,
  over: () => boolean,
  heights: TriedHeights,
): Pick<KindPricers, 'exact' | 'quick'> {
  const { boxes, demand, limits, keep } = request;
  const rules = boxes.map(() => request.rule);
  const three = (left: readonly Box[], tried = heights) =>
    new ThreeStagePricer(left, limits, rules, DEFAULT_EFFORT, over, tried);
  const free = (left: readonly Box[]) => new FreePricer(left, limits, rules, DEFAULT_EFFORT, over);
  const exact = new LazyPricer(() => (stages === 3 ? three(boxes, 'every') : free(boxes)));
  const everyHeight = heights === 'every' || (limits.narrowest <= 1 && request.rule === undefined);
  const alike = stages === 3 && everyHeight;
  const mostThree = alike ? exact : new LazyPricer(() => three(boxes));
  const strips = new LazyPricer(() =>
    stripsFor(request, demand, keep === undefined ? 'needed' : 'few'),
  );
  const all = new BothPricers(strips, mostThree);
  const quick = (wanted: readonly number[]) => {
    if (wanted === demand) return all;
    // Fewer kinds of pieces make fewer places to cut at.
    const kinds = wanted.filter((count) => count > 0).length;
    const left = wantedOnly(boxes, wanted);
    const mostly = kinds <= wanted.length / 2 ? three(left) : mostThree;
    if (kinds > FEW_KINDS) return new BothPricers(stripsFor(request, wanted), mostly);
    const mindful = new MindfulPricer(mostly, wanted);
    if (stages === 3) return new BothPricers(stripsFor(request, wanted), mindful);
    const freely = new MindfulPricer(free(left), wanted);
    return new BothPricers(stripsFor(request, wanted), new BothPricers(mindful, freely));
  };
  return { exact, quick };
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
