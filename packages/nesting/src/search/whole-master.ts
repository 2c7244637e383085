import { BandMaster } from '../master/band-master.js';
import type { Cap } from '../master/objective.js';
import { compose } from './compose.js';
import type { SearchGround } from './ground.js';
import type { Planned } from './planned.js';

export interface WholeAnswer {
  /** `infeasible`: these patterns make no plan that keeps to the cap. */
  readonly status: 'optimal' | 'infeasible' | 'stopped';
  /** The best plan that came of it. */
  readonly planned?: readonly Planned[];
  /** What the master counts for it: at most what it costs. */
  readonly cost?: number;
}

/**
 * Solves the integer master over all patterns of the ground's book.
 * @param cap to keep to besides those of the objective, if any
 * @param nodes of branching after which it stops; no limit when absent
 */
export async function solveWhole(
  ground: SearchGround,
  cap: Cap | undefined,
  seconds: number,
  nodes: number | undefined,
): Promise<WholeAnswer> {
  const { classes, demand, objective, book, engines } = ground;
  const capped = { ...objective, caps: [...objective.caps, ...(cap ? [cap] : [])] };
  const master = new BandMaster({ classes, demand, objective: capped, packs: true, book, engines });
  ground.effort.integerMasters++;
  try {
    master.addFromBook();
    const limits = { integer: true, seconds, ...(nodes === undefined ? {} : { nodes }) };
    const answer = await master.solve(limits);
    if (typeof answer === 'string') return { status: answer };
    const planned = compose(book, answer).map(([pattern, count]) => ({ pattern, count }));
    return { status: answer.status, planned, cost: answer.cost };
  } finally {
    master.close();
  }
}
