import type { BandMaster } from '../master/band-master.js';
import { type LinearResult, solveLinear } from '../master/column-generation.js';
import type { Pattern } from '../pattern/part.js';
import { available, without } from './class-supplies.js';
import { compose } from './compose.js';
import type { SearchGround } from './ground.js';
import { demandLeft, type Planned, sheetsUsed } from './planned.js';

export interface DiveRequest {
  /** The linear master of the whole problem; it is set back to it before the dive returns. */
  readonly master: BandMaster;
  readonly root: LinearResult;
  /** Once the linear plan needs no more sheets than this, the dive ends. */
  readonly sheetsLeft: number;
  /** Adds noise to the choice of patterns; without it the dive is the plainest. */
  readonly random: (() => number) | undefined;
}

/** Rounds of column generation after each rounding. */
const ROUNDS_EACH = 6;
/** How far noise may change the weight of a pattern, as a share. */
const NOISE = 0.5;
const WHOLE = 1e-6;

/**
 * Dives towards an integer plan: rounds the linear plan down, or its largest
 * pattern up where all are below one, takes those sheets as cut, and solves the
 * linear master for what is left, with fresh patterns that fit it; until few
 * sheets are left to plan.
 * @returns the sheets taken
 */
export async function dive(
  ground: SearchGround,
  request: DiveRequest,
): Promise<readonly Planned[]> {
  const { master } = request;
  const taken: Planned[] = [];
  let demand = ground.demand;
  let { answer } = request.root;
  while (answer !== undefined && demand.some((quantity) => quantity > 0)) {
    const sheetsLeft = answer.sheets.reduce((sum, amount) => sum + amount, 0);
    if (sheetsLeft <= request.sheetsLeft || ground.deadline.left() <= 0) break;
    const chosen = choose(compose(ground.book, answer), request.random);
    const before = taken.length;
    for (const [pattern, most] of chosen) {
      const used = sheetsUsed(taken, ground.classes.length);
      const left = available(ground.classes[pattern.stockClass]) - used[pattern.stockClass];
      const count = Math.min(most, usefulCopies(pattern, demand), left);
      if (count <= 0) continue;
      taken.push({ pattern, count });
      demand = demandLeft(ground.demand, taken);
    }
    if (taken.length === before) break;
    const classes = ground.classes.map((entry, g) =>
      without(entry, sheetsUsed(taken, ground.classes.length)[g]),
    );
    master.setDemand(demand);
    master.setSupplies(classes);
    const result = await solveLinear({
      ...ground,
      pricer: ground.pricerFor(demand),
      classes,
      demand,
      master,
      enough: () => false,
      mostRounds: ROUNDS_EACH,
    });
    ground.effort.rounds += result.rounds;
    answer = result.answer;
  }
  master.setDemand(ground.demand);
  master.setSupplies(ground.classes);
  return taken;
}

/** What to take from a linear plan: its whole part, or else one sheet of what it has most of. */
function choose(
  composed: readonly (readonly [Pattern, number])[],
  random: (() => number) | undefined,
): readonly (readonly [Pattern, number])[] {
  const whole = composed
    .map(([pattern, amount]) => [pattern, Math.floor(amount + WHOLE)] as const)
    .filter(([, count]) => count >= 1);
  if (whole.length > 0) return whole;
  let best: { pattern: Pattern; weight: number } | undefined;
  for (const [pattern, amount] of composed) {
    const weight = amount * (random === undefined ? 1 : 1 + NOISE * (random() - 0.5));
    if (best === undefined || weight > best.weight) best = { pattern, weight };
  }
  return best === undefined ? [] : [[best.pattern, 1]];
}

/** Copies of a pattern until one of them would give no piece that is still wanted. */
function usefulCopies(pattern: Pattern, demand: readonly number[]): number {
  return Math.max(0, ...pattern.counts.map(([piece, copies]) => Math.ceil(demand[piece] / copies)));
}
