import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import type { Cap } from '../master/objective.js';
import type { StockClass } from '../master/stock-class.js';
import type { Pattern } from '../pattern/part.js';
import { compose } from './compose.js';
import type { SearchGround } from './ground.js';
import type { Planned } from './planned.js';

export interface CoverRequest {
  /** Pieces to cut. */
  readonly demand: readonly number[];
  /** Stock that may be used. */
  readonly classes: readonly StockClass[];
  /** What the sheets may cost, and whatever else they must keep to. */
  readonly caps: readonly Cap[];
  /** What going without a piece counts, one for each. */
  readonly weights: readonly number[];
  /** Patterns known to be of use. */
  readonly seeds: readonly Pattern[];
  readonly seconds: number;
  readonly random: () => number;
}

/** Rounds of column generation before the integer master. */
const ROUNDS = 25;

/**
 * Cuts as much of a small demand as the caps allow: generates patterns for it by
 * the linear master, then solves the integer master for the least weight of
 * pieces gone without.
 * @returns undefined where no answer came in time
 */
export async function cover(
  ground: SearchGround,
  request: CoverRequest,
): Promise<{ readonly planned: readonly Planned[]; readonly best: boolean } | undefined> {
  const { demand, classes, caps, weights, seconds } = request;
  const { objective, engines } = ground;
  const book = ground.newBook();
  for (const pattern of request.seeds) book.addPattern(pattern);
  const pricer = ground.pricerFor(demand);
  const linear = new BandMaster({ classes, demand, objective, penalties: ground.penalties, book, engines });
  try {
    const result = await solveLinear({
      ...ground,
      pricer,
      classes,
      demand,
      book,
      master: linear,
      enough: () => false,
      mostRounds: ROUNDS,
    });
    ground.effort.rounds += result.rounds;
    const { pieces } = result.bound.multipliers;
    const room = caps[caps.length-1].atMost * ground.scale - result.bound.scaled;
    if (pricer.within !== undefined && (globalThis as any).LIST > 0) {
      for (let gap = Math.max(0, room) + ground.scale*0.02; gap > 1; gap = Math.floor(gap / 2)) {
        const list = pricer.within(pieces, result.bound.classCost, gap, (globalThis as any).LIST);
        if (list === undefined) continue;
        book.addList(list);
        break;
      }
    }
    for (let i = 0; i < (globalThis as any).PERT; i++) {
      const values = Float64Array.from(pieces, (value) =>
        Math.floor(value * (1 + (globalThis as any).AMP * (request.random() - 0.5))),
      );
      const priced = pricer.price(values, 0);
      for (let g = 0; g < classes.length; g++) {
        for (const { pattern } of priced.patterns(g)) book.addPattern(pattern);
      }
      for (const offer of priced.bands?.() ?? []) book.addBand(offer.make());
    }
  } finally {
    linear.close();
  }
  const whole = new BandMaster({
    classes,
    demand,
    objective: { cost: undefined, caps },
    penalties: weights,
    packs: true,
    book,
    engines,
  });
  try {
    whole.addFromBook();
    ground.effort.integerMasters++;
    const answer = await whole.solve({ integer: true, seconds });
    if (typeof answer === 'string') return undefined;
    const planned = compose(book, answer).map(([pattern, count]) => ({ pattern, count }));
    return { planned, best: answer.status === 'optimal' };
  } finally {
    whole.close();
  }
}
