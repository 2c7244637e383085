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
  /**
   * What going without a piece counts, one for each: the least of that is sought.
   * Absent where all must be cut: the least cost is sought.
   */
  readonly weights: readonly number[] | undefined;
  /** Patterns known to be of use. */
  readonly seeds: readonly Pattern[];
  /** Nodes that the integer master may take. */
  readonly nodes: number;
}

/** Rounds of column generation before the integer master. */
const ROUNDS = 20;
/** Share of the time left that one integer master may take. */
const SHARE_OF_TIME = 0.15;

/**
 * Cuts as much of a small demand as the caps allow: generates patterns for it by
 * the linear master, then solves the integer master for the least weight of
 * pieces gone without, or for the least cost.
 * @returns undefined where no answer came in time
 */
export async function cover(
  ground: SearchGround,
  request: CoverRequest,
): Promise<{ readonly planned: readonly Planned[]; readonly best: boolean } | undefined> {
  const { demand, classes, caps, weights, nodes } = request;
  const { objective, engines } = ground;
  const book = ground.newBook();
  for (const pattern of request.seeds) book.addPattern(pattern);
  const linear = new BandMaster({
    classes,
    demand,
    objective,
    penalties: ground.penalties,
    book,
    engines,
  });
  try {
    const result = await solveLinear({
      ...ground,
      pricer: ground.pricerFor(demand),
      classes,
      demand,
      book,
      master: linear,
      enough: () => false,
      mostRounds: ROUNDS,
    });
    ground.effort.rounds += result.rounds;
  } finally {
    linear.close();
  }
  const whole = new BandMaster({
    classes,
    demand,
    objective: { cost: weights === undefined ? objective.cost : undefined, caps },
    ...(weights === undefined ? {} : { penalties: weights }),
    packs: true,
    book,
    engines,
  });
  try {
    whole.addFromBook();
    ground.effort.integerMasters++;
    const answer = await whole.solve({
      integer: true,
      seconds: ground.deadline.left() * SHARE_OF_TIME,
      nodes,
    });
    if (typeof answer === 'string') return undefined;
    const planned = compose(book, answer).map(([pattern, count]) => ({ pattern, count }));
    return { planned, best: answer.status === 'optimal' };
  } finally {
    whole.close();
  }
}
