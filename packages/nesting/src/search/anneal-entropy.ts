import type { EntropyModel } from './band-entropy.js';

export interface EntropyAnnealRequest {
  /** The entropy is no more than what any of these says. */
  readonly models: readonly EntropyModel[];
  /** By sheet pattern, its slots: [slot, copies]. */
  readonly slots: readonly (readonly (readonly [number, number])[])[];
  /** For each sheet, its pattern. */
  readonly start: Int32Array;
  /** Sheets that may be cut otherwise, and how many of them at a time. */
  readonly free: readonly number[];
  readonly changes: number;
  readonly steps: number;
  /** Another pattern for a sheet of one. */
  readonly draw: (pattern: number) => number;
  /** Whether sheets were met before. */
  readonly met: (sheets: Int32Array) => boolean;
  readonly random: () => number;
}

/** Temperatures at the start and at the end, in units of entropy. */
const HOT = 5;
const COLD = 1e-3;
/** How often a sheet is set back to what it was at the start. */
const BACK = 0.3;

/**
 * Changes the patterns of sheets so that all models allow their bands much entropy:
 * simulated annealing (Kirkpatrick, Gelatt, Vecchi 1983).
 * @returns the best sheets that were not met before; those of the start where there are none
 */
export function annealEntropy(request: EntropyAnnealRequest): Int32Array {
  const { slots, start, free, changes, steps, draw, met, random } = request;
  const sheets = Int32Array.from(start);
  const states = request.models.map((model) => new ModelState(model, slots, sheets));
  const change = new SlotChange(slots);
  let now = Math.max(...states.map(({ energy }) => energy));
  let best = met(sheets) ? Number.POSITIVE_INFINITY : now;
  const bestSheets = Int32Array.from(sheets);
  const energies = new Float64Array(states.length);
  let changed = 0;
  for (let step = 0; step < steps; step++) {
    const at = free[Math.floor(random() * free.length)];
    const old = sheets[at];
    const fresh = changed > 0 && random() < BACK ? start[at] : draw(old);
    if (fresh === old) continue;
    const after = changed + (fresh === start[at] ? 0 : 1) - (old === start[at] ? 0 : 1);
    if (after > changes) continue;
    change.set(old, fresh);
    const heat = HOT * (1 - step / steps) ** 2 + COLD;
    const most = now - heat * Math.log(random());
    let next = Number.NEGATIVE_INFINITY;
    for (let index = 0; index < states.length && next <= most; index++) {
      energies[index] = states[index].energyAfter(change);
      next = Math.max(next, energies[index]);
    }
    if (next > most) continue;
    for (let index = 0; index < states.length; index++) {
      states[index].apply(change, energies[index]);
    }
    now = next;
    sheets[at] = fresh;
    changed = after;
    if (now < best && !met(sheets)) {
      best = now;
      bestSheets.set(sheets);
    }
  }
  return bestSheets;
}

type Slots = readonly (readonly (readonly [number, number])[])[];

/** By how many slots one pattern differs from another. */
class SlotChange {
  readonly #slots: Slots;
  readonly slot: Int32Array;
  readonly copies: Float64Array;
  count = 0;

  constructor(slots: Slots) {
    this.#slots = slots;
    const most = 2 * slots.reduce((longest, own) => Math.max(longest, own.length), 1);
    this.slot = new Int32Array(most);
    this.copies = new Float64Array(most);
  }

  set(old: number, fresh: number): void {
    this.count = 0;
    for (const [slot, copies] of this.#slots[old]) this.#add(slot, -copies);
    for (const [slot, copies] of this.#slots[fresh]) this.#add(slot, copies);
  }

  #add(slot: number, copies: number): void {
    this.slot[this.count] = slot;
    this.copies[this.count++] = copies;
  }
}

/** What one model says of the sheets now, its sign changed, and how that changes with the slots. */
class ModelState {
  readonly #curvature: Float64Array;
  readonly #slope: Float64Array;
  energy: number;

  constructor(
    { slots: about, entropy, slope, curvature }: EntropyModel,
    slots: Slots,
    sheets: Int32Array,
  ) {
    this.#curvature = curvature;
    const apart = about.map((count) => -count);
    for (const sheet of sheets) for (const [slot, copies] of slots[sheet]) apart[slot] += copies;
    const size = about.length;
    this.energy = -entropy;
    this.#slope = slope.map((value, slot) => {
      let bend = 0;
      for (let other = 0; other < size; other++)
        bend += curvature[slot * size + other] * apart[other];
      this.energy += apart[slot] * (bend / 2 - value);
      return bend - value;
    });
  }

  energyAfter({ slot, copies, count }: SlotChange): number {
    const curvature = this.#curvature;
    const slope = this.#slope;
    let { energy } = this;
    for (let i = 0; i < count; i++) {
      const from = slot[i] * slope.length;
      let bend = 0;
      for (let j = 0; j < count; j++) bend += curvature[from + slot[j]] * copies[j];
      energy += copies[i] * (slope[slot[i]] + bend / 2);
    }
    return energy;
  }

  apply({ slot, copies, count }: SlotChange, energy: number): void {
    const curvature = this.#curvature;
    const slope = this.#slope;
    this.energy = energy;
    for (let i = 0; i < count; i++) {
      const from = slot[i] * slope.length;
      for (let other = 0; other < slope.length; other++) {
        slope[other] += copies[i] * curvature[from + other];
      }
    }
  }
}
