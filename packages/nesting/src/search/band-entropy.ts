import { MaxEntropy } from '../entropy/max-entropy.js';
import type { BandBook } from '../master/band-book.js';
import { bandColumns, lossOfLack, type PlanEntropy, restColumns } from './plan-entropy.js';

/** The entropy of bands in so many of each slot of a plan, to the second order about them. */
export interface EntropyModel {
  /** By slot of the plan. */
  readonly slots: Float64Array;
  readonly entropy: number;
  /** What one more of each slot adds, to the first order. */
  readonly slope: Float64Array;
  /** The second derivatives, their signs changed, one slot after another. */
  readonly curvature: Float64Array;
}

const NEAR = 1e-3;
const STEPS = 80;
const NONE = 1e-9;

/**
 * The entropy of the bands of a plan as a function of how many there are of each slot: it is
 * concave, and the higher, the more plans in whole numbers of bands there are.
 */
export class BandEntropy {
  readonly #numbers: MaxEntropy;
  readonly #slotOf: readonly number[];
  readonly #demand: readonly number[];
  readonly #slots: number;
  /** Multipliers at which every column loses something. */
  readonly #start: Float64Array;

  constructor(book: BandBook, demand: readonly number[], plan: PlanEntropy) {
    const { slots, bands, worth, numbers } = plan;
    const at = new Map(slots.map((slot, index) => [slot, index]));
    const indexOf = (slot: number) => at.get(slot) ?? 0;
    this.#demand = demand;
    this.#slots = slots.length;
    this.#slotOf = bands.map((band) => indexOf(book.bands[band].slot));
    this.#start = numbers.multipliers.slice(0, demand.length + slots.length);
    const columns = [
      ...bandColumns(
        book,
        bands,
        this.#slotOf.map((slot) => demand.length + slot),
      ),
      ...restColumns(worth.map(lossOfLack), slots.length),
    ];
    // A band lies in one slot.
    this.#numbers = new MaxEntropy(demand.length + slots.length, columns, demand.length);
  }

  /**
   * @param slots by slot of the plan, how many; broken ones too
   * @param over asked now and then; true gives up
   * @returns undefined where numbers are beyond doubles, or it is over
   */
  at(slots: Float64Array, over?: () => boolean): EntropyModel | undefined {
    const numbers = this.#numbers;
    const pieces = this.#demand.length;
    const there = (slot: number) => (slots[slot] > NONE ? 1 : 0);
    this.#slotOf.forEach((slot, column) => {
      numbers.active[column] = there(slot);
    });
    const firstEmpty = numbers.columns - this.#slots;
    const right = Float64Array.from([...this.#demand, ...slots.map((count) => -count)]);
    for (let slot = 0; slot < this.#slots; slot++) numbers.active[firstEmpty + slot] = there(slot);
    numbers.multipliers.set(this.#start);
    const entropy = numbers.solve(right, { near: NEAR, steps: STEPS, over });
    if (entropy === undefined) return undefined;
    const rows = Array.from(slots, (_, slot) => pieces + slot);
    return {
      slots,
      entropy,
      slope: Float64Array.from(rows, (row) => -numbers.multipliers[row]),
      curvature: numbers.curvature(rows),
    };
  }
}
