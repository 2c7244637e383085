import type { KeepValue } from '../pattern/keep-value.js';
import { type Limits, netRest } from '../pattern/limits.js';
import { EVERY_TICK, stepsOf, stepsWithin } from './measure.js';
import type { StripFamily, StripWidth } from './strip-family.js';
import { type LayWorths, StripFilling } from './strip-filling.js';
import { trimValue } from './trim-value.js';

/**
 * Fills strips in which lays are worth more the wider they are, since what is trimmed off beside them
 * is kept. Which copies were taken is found anew where it is asked for: for hundreds of lays in as
 * many widths it would be gigabytes.
 */
export class TrimmedStrip {
  readonly #family: StripFamily;
  readonly #limits: Limits;
  readonly #keep: KeepValue | undefined;
  readonly #filling: StripFilling;
  /** Steps of the measure along a strip. */
  readonly #room: number;
  /** Of each lay in the strip looked at. */
  readonly #worths: Float64Array;
  #values: ArrayLike<number> = [];
  #coin = 0;

  /**
   * @param most for each lay, how many copies are of use
   * @param measure along the strips; no lay may be less than a step of it
   */
  constructor(
    family: StripFamily,
    most: readonly number[],
    limits: Limits,
    keep: KeepValue | undefined,
    measure = EVERY_TICK,
  ) {
    this.#family = family;
    this.#limits = limits;
    this.#keep = keep;
    this.#room = stepsWithin(family.length, measure, limits);
    const lays = family.lays.map((lay) => ({ ...lay, along: stepsOf(lay.along, measure) }));
    // In larger steps there is always enough left that it may be.
    const own = measure.step > 1 ? { ...limits, narrowest: 1 } : limits;
    this.#filling = new StripFilling(lays, most, this.#room, own);
    this.#worths = new Float64Array(family.lays.length);
  }

  /**
   * @param values one for each lay, at least 0; they must not change before the next call
   * @param coin what a coin of kept remnants is worth in the same unit
   */
  setValues(values: ArrayLike<number>, coin: number): void {
    this.#values = values;
    this.#coin = coin;
  }

  /** What fills so many steps, as `StripFilling` has it; valid until the next call. */
  fill(strip: StripWidth): Float64Array {
    return this.#filling.fill(this.#worthsIn(strip));
  }

  /** Adds up the copies of each lay in what fills so many steps of a strip. */
  count(strip: StripWidth, filled: number, counts: Map<number, number>): void {
    this.#filling.count(this.#worthsIn(strip), filled, counts);
  }

  #worthsIn({ leading, fitting, extent }: StripWidth): LayWorths {
    const worths = this.#worths.fill(0);
    const learn = (lay: number) => {
      const trim = trimValue(this.#family.lays[lay], extent, this.#limits, this.#keep);
      worths[lay] = this.#values[lay] + this.#coin * trim;
    };
    for (let lay = 0; lay < leading; lay++) learn(lay);
    fitting.forEach(learn);
    const { length } = this.#family;
    const { kerf } = this.#limits;
    // A longer end is worth more by length; but for the coin that rounding may take off.
    const end = this.#keep?.(netRest(length, this.#limits), extent - kerf) ?? 0;
    return { worths, endPerTick: (this.#coin * (end + 1)) / Math.max(1, this.#room) };
  }
}
