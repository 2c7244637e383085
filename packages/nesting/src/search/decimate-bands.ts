import type { SolveLimits } from '../entropy/max-entropy.js';
import { type DecimatedBands, OpenBandPlan, type OpenBands } from './open-bands.js';
import { firstWorth, MOST_ROWS } from './plan-entropy.js';

/** How far noise may raise what is expected, when the next is chosen. */
const NOISE = 1;
/** Of bands of which so many are expected, coarse ones are settled first. */
const LIKELY_ENOUGH = 0.5;
/** The share of what is expected that is settled at once, and bands too few to settle together. */
const AT_ONCE = 0.5;
const FEW = 3;
/** Entropy that settling may lose beyond what it loses on average, and refusals in a row that are too many. */
const MAY_LOSE = 4;
const MOST_REFUSED = 8;
const FIRST: SolveLimits = { near: 1e-2, steps: 100 };
const NEXT: SolveLimits = { near: 0.3, steps: 40 };

/**
 * Settles whole bands by decimation: time and again those that are expected most in the most
 * even plan of what is left; coarse ones first, which hold many copies of a piece and fit less
 * and less as its copies become few. What loses much entropy is refused, unless refusing it
 * loses more.
 * @param worth of each piece in the linear plan, in any unit
 * @param left so many bands are left open
 * @param over asked now and then; true gives up
 * @returns undefined where there are too many kinds of pieces and slots, numbers are beyond
 *   doubles, or it is over
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
  new Decimation(likely, random).run(left);
  return over?.() ? undefined : likely.result();
}

class Decimation {
  readonly #plan: OpenBandPlan;
  readonly #random: () => number;
  /** By place of a band, how much it counts that it is coarse. */
  readonly #coarse: readonly number[];

  constructor(plan: OpenBandPlan, random: () => number) {
    this.#plan = plan;
    this.#random = random;
    this.#coarse = Array.from({ length: plan.places }, (_, place) => plan.copiesIn(place) ** 2);
  }

  run(left: number): void {
    const plan = this.#plan;
    let entropy = plan.solve(NEXT);
    if (entropy !== undefined) entropy = this.#settleMany(entropy, left);
    const refused: number[] = [];
    let least = { place: -1, lost: Number.POSITIVE_INFINITY };
    while (entropy !== undefined && plan.left > left && plan.wanted) {
      const forced = refused.length >= MOST_REFUSED;
      const place = forced ? least.place : this.#likeliest();
      if (place < 0) return;
      const next = this.#settleOrRefuse(place, entropy, forced);
      entropy = next.entropy;
      if (next.refused) {
        refused.push(place);
        if (next.lost < least.lost) least = { place, lost: next.lost };
        continue;
      }
      if (forced) for (const other of refused) plan.refuse(other, false);
      refused.length = 0;
      least = { place: -1, lost: Number.POSITIVE_INFINITY };
    }
  }

  /** Settles half of all bands of which several are expected, as long as that loses little. */
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
        const wanted = Math.floor(amounts[place] * AT_ONCE);
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
  #settleOrRefuse(
    place: number,
    entropy: number,
    forced: boolean,
  ): { readonly entropy: number | undefined; readonly refused: boolean; readonly lost: number } {
    const plan = this.#plan;
    const multipliers = plan.multipliers.slice();
    const wanted = Math.floor(plan.amounts[place] * AT_ONCE);
    const count = Math.max(1, Math.min(wanted, plan.fits(place)));
    const average = averageLoss(plan.amounts[place], count);
    plan.take(place, count);
    const settled = plan.solve(NEXT);
    const lost = settled === undefined ? Number.POSITIVE_INFINITY : entropy - settled - average;
    if (forced || lost <= MAY_LOSE) return { entropy: settled, refused: false, lost };
    plan.take(place, -count);
    plan.refuse(place, true);
    plan.multipliers.set(multipliers);
    const without = plan.solve(NEXT);
    if (without !== undefined && entropy - without <= lost) {
      return { entropy: without, refused: true, lost };
    }
    plan.refuse(place, false);
    plan.take(place, count);
    plan.multipliers.set(multipliers);
    return { entropy: plan.solve(NEXT), refused: false, lost };
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
