import type { SolveLimits } from '../entropy/max-entropy.js';
import {
  type DecimatedBands,
  OpenBandPlan,
  type OpenBandState,
  type OpenBands,
} from './open-bands.js';
import { firstWorth, MOST_ROWS } from './plan-entropy.js';

/** How far noise may raise what is expected, when the next is chosen. */
const NOISE = 1;
/** Of bands of which so many are expected, coarse ones are settled first. */
const LIKELY_ENOUGH = 0.5;
/** The share of what is expected that is settled at once, at least and at most, and bands too few to settle together. */
const AT_ONCE = { least: 0.15, most: 0.4 };
const FEW = 3;
/** Entropy that settling may lose beyond what it loses on average, and refusals in a row that are too many. */
const MAY_LOSE = 4;
const MOST_REFUSED = 8;
/** What loses so much either way is a dead end, from which decimation goes back: twice as far each time, so often. */
const DEAD_END = 20;
const MOST_SET_BACK = 8;
/** States that are kept to go back to. */
const MOST_STATES = 2 ** MOST_SET_BACK;
const FIRST: SolveLimits = { near: 1e-2, steps: 100 };
const NEXT: SolveLimits = { near: 0.3, steps: 40 };

/**
 * Settles whole bands by decimation: time and again those that are expected most in the most
 * even plan of what is left; coarse ones first, which hold many copies of a piece and fit less
 * and less as its copies become few. What loses much entropy is refused, unless refusing it
 * loses more; where either loses much, it goes back and settles others.
 * @param worth of each piece in the linear plan, in any unit
 * @param left so many bands are left open
 * @param over asked now and then; true gives up
 * @returns undefined where there are too many kinds of pieces and slots, numbers are beyond
 *   doubles, it is over, or one dead end came after another
 */
export function decimateBands(
  open: OpenBands,
  worth: readonly number[],
  left: number,
  random: () => number,
  over?: () => boolean,
): DecimatedBands | undefined {
  const all = new OpenBandPlan(open, firstWorth(worth), over);
  if (all.rows > MOST_ROWS || all.solve(FIRST) === undefined) return undefined;
  const likely = new OpenBandPlan({ ...open, bands: all.likely() }, all.worth(), over);
  if (likely.solve(FIRST) === undefined) return undefined;
  likely.allowLack();
  return new Decimation(likely, random).run(left) && !over?.() ? likely.result() : undefined;
}

interface Settled {
  readonly entropy: number | undefined;
  readonly refused: boolean;
  /** What settling loses, or would have lost, beyond what it loses on average. */
  readonly lost: number;
  /** What was lost, by settling or by refusing. */
  readonly spent: number;
}

const NONE_REFUSED = { place: -1, lost: Number.POSITIVE_INFINITY };

class Decimation {
  readonly #plan: OpenBandPlan;
  readonly #random: () => number;
  readonly #atOnce: number;
  /** By place of a band, how much it counts that it is coarse. */
  readonly #coarse: readonly number[];

  constructor(plan: OpenBandPlan, random: () => number) {
    this.#plan = plan;
    this.#random = random;
    this.#atOnce = AT_ONCE.least + (AT_ONCE.most - AT_ONCE.least) * random();
    this.#coarse = Array.from({ length: plan.places }, (_, place) => plan.copiesIn(place) ** 2);
  }

  /** @returns false where it gives up */
  run(left: number): boolean {
    const plan = this.#plan;
    let entropy = plan.solve(NEXT);
    if (entropy !== undefined) entropy = this.#settleMany(entropy, left);
    let refused: number[] = [];
    let least = NONE_REFUSED;
    const before: { readonly state: OpenBandState; readonly entropy: number }[] = [];
    let setBack = 0;
    while (entropy !== undefined && plan.left > left && plan.wanted) {
      if (refused.length === 0) before.push({ state: plan.state(), entropy });
      if (before.length > MOST_STATES) before.shift();
      const forced = refused.length >= MOST_REFUSED;
      const place = forced ? least.place : this.#likeliest();
      if (place < 0) break;
      const next = this.#settleOrRefuse(place, entropy, forced);
      if (!(next.spent <= DEAD_END)) {
        if (++setBack > MOST_SET_BACK) return false;
        const back = Math.max(0, before.length - 2 ** setBack);
        const start = before[back];
        before.length = back;
        plan.goBackTo(start.state);
        entropy = start.entropy;
        refused = [];
        least = NONE_REFUSED;
        continue;
      }
      entropy = next.entropy;
      if (next.refused) {
        refused.push(place);
        if (next.lost < least.lost) least = { place, lost: next.lost };
        continue;
      }
      if (forced) for (const other of refused) plan.refuse(other, false);
      refused = [];
      least = NONE_REFUSED;
    }
    return entropy !== undefined;
  }

  /** Settles a share of all bands of which several are expected, as long as that loses little. */
  #settleMany(entropyBefore: number, left: number): number | undefined {
    const plan = this.#plan;
    const order = [...this.#coarse.keys()].sort(
      (a, b) => this.#coarse[b] - this.#coarse[a] || a - b,
    );
    for (let entropy = entropyBefore; ; ) {
      const multipliers = plan.multipliers.slice();
      const amounts = plan.amounts.slice();
      const taken: [place: number, count: number][] = [];
      let average = 0;
      for (const place of order) {
        const wanted = Math.floor(amounts[place] * this.#atOnce);
        if (wanted < 1) continue;
        const count = Math.min(wanted, plan.fits(place), plan.left - left);
        if (count < 1) continue;
        plan.take(place, count);
        taken.push([place, count]);
        average += averageLoss(amounts[place], count);
      }
      const after = taken.length < FEW ? undefined : plan.solve(NEXT);
      if (after !== undefined && entropy - after - average <= MAY_LOSE) {
        entropy = after;
        continue;
      }
      for (const [place, count] of taken) plan.take(place, -count);
      plan.multipliers.set(multipliers);
      return plan.solve(NEXT);
    }
  }

  /** Settles some bands of a place, unless that loses much and refusing it less. */
  #settleOrRefuse(place: number, entropy: number, forced: boolean): Settled {
    const plan = this.#plan;
    const multipliers = plan.multipliers.slice();
    const wanted = Math.floor(plan.amounts[place] * this.#atOnce);
    const count = Math.max(1, Math.min(wanted, plan.fits(place)));
    const average = averageLoss(plan.amounts[place], count);
    plan.take(place, count);
    const settled = plan.solve(NEXT);
    const lost = settled === undefined ? Number.POSITIVE_INFINITY : entropy - settled - average;
    if (forced || lost <= MAY_LOSE) return { entropy: settled, refused: false, lost, spent: lost };
    plan.take(place, -count);
    plan.refuse(place, true);
    plan.multipliers.set(multipliers);
    const without = plan.solve(NEXT);
    if (without !== undefined && entropy - without <= lost) {
      return { entropy: without, refused: true, lost, spent: entropy - without };
    }
    plan.refuse(place, false);
    plan.take(place, count);
    plan.multipliers.set(multipliers);
    return { entropy: plan.solve(NEXT), refused: false, lost, spent: lost };
  }

  #likeliest(): number {
    const { amounts, places } = this.#plan;
    let best = -1;
    let most = 0;
    for (let place = 0; place < places; place++) {
      const amount = amounts[place];
      if (amount === 0) continue;
      const weight = amount >= LIKELY_ENOUGH ? this.#coarse[place] : 1;
      const score = amount * weight * (1 + NOISE * this.#random());
      if (score > most) [best, most] = [place, score];
    }
    return best;
  }
}

/** The entropy that is lost on average by settling so many of what is distributed geometrically. */
function averageLoss(expected: number, count: number): number {
  return count * Math.log1p(1 / Math.max(Number.EPSILON, expected));
}
