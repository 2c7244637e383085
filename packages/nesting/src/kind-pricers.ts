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
  const { boxes, demand, limits, rule, keep } = request;
  // Pieces that are not wanted would only make more widths to try.
  const wantedOnly = (wanted: readonly number[]) =>
    wanted.every((count) => count > 0)
      ? boxes
      : boxes.map((box) => ({ ...box, lays: box.lays.filter((lay) => wanted[lay.piece] > 0) }));
  const two = (wanted: readonly number[], tried: TriedWidths = 'few') =>
    affordablePricer(wantedOnly(wanted), wanted, limits, keep, tried);
  const bare = (wanted: readonly number[]) =>
    affordablePricer(wantedOnly(wanted), wanted, limits, undefined, 'needed');
  if (stages === 2) {
    const whole = new LazyPricer(() =>
      keep === undefined ? boundingPricer(wantedOnly(demand), demand, limits) : two(demand),
    );
    const strips = once(() => stripLister(boxes, demand, limits, keep ?? worthless));
    const exact =
      keep === undefined || rule === undefined
        ? whole
        : new LazyPricer(() =>
            valuedTwoStagePricer(boxes, demand, limits, keep, rule, strips, whole),
          );
    const quick = (wanted: readonly number[]) => (wanted === demand ? whole : two(wanted));
    return { exact, quick, thorough: bare, strips };
  }
  const rules = boxes.map(() => rule);
  const three = new LazyPricer(() => new ThreeStagePricer(boxes, limits, rules));
  const whole = new LazyPricer(() => two(demand, keep === undefined ? 'needed' : 'few'));
  const both = new BothPricers(whole, three);
  const quick = (wanted: readonly number[]) => {
    if (wanted === demand) return both;
    // Fewer kinds of pieces make fewer places to cut at.
    const kinds = wanted.filter((count) => count > 0).length;
    const left = wantedOnly(wanted);
    const fewer = kinds <= wanted.length / 2;
    const mostly = fewer ? new ThreeStagePricer(left, limits, rules) : three;
    if (kinds > FEW_KINDS) return new BothPricers(two(wanted), mostly);
    const mindful = new MindfulPricer(mostly, wanted);
    if (stages === 3) return new BothPricers(two(wanted), mindful);
    const freely = new MindfulPricer(new FreePricer(left, limits, rules), wanted);
    return new BothPricers(two(wanted), new BothPricers(mindful, freely));
  };
  const exact = stages === 3 ? three : new LazyPricer(() => new FreePricer(boxes, limits, rules));
  const thorough = (wanted: readonly number[]) => new BothPricers(bare(wanted), quick(wanted));
  return { exact, quick, thorough, strips: () => undefined };
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
