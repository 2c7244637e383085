import { shareOf } from '../deadline.js';
import { solvePatternMaster } from '../master/pattern-master.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';

/** Share of the time left after which the enumeration is given up. */
const SHARE_TO_ENUMERATE = 0.2;
/** Share of the time left that the integer master may take. */
const SHARE_TO_SOLVE = 0.3;

/**
 * The integer master over every pattern of a small problem: it finds the best plan
 * and proves it, or that there is none, whatever the limits of the shear and the
 * value of remnants.
 * @returns whether it did
 */
export async function masterOfEveryPattern(
  ground: SearchGround,
  incumbent: Incumbent,
): Promise<boolean> {
  const { classes, demand, objective, engines, deadline, effort } = ground;
  if (incumbent.met || objective.caps.length > 0 || deadline.left() <= 0) return false;
  const toEnumerate = shareOf(deadline, SHARE_TO_ENUMERATE);
  const patterns = ground.everyPattern(() => toEnumerate.left() <= 0);
  if (patterns === undefined) return false;
  const { measure } = incumbent;
  effort.integerMasters++;
  const answer = await solvePatternMaster(
    { classes, demand, measure, patterns, engines },
    deadline.left() * SHARE_TO_SOLVE,
  );
  if (answer === 'stopped') return false;
  if (answer === 'infeasible') {
    if (incumbent.planned !== undefined) return false;
  } else {
    const planned = patterns.map((pattern, i) => ({ pattern, count: answer.counts[i] }));
    incumbent.offer(planned.filter(({ count }) => count > 0));
    // Nothing is believed: a plan that comes out dearer than the master said proves nothing.
    if (answer.status === 'stopped' || incumbent.cost > answer.cost) return false;
  }
  incumbent.prove();
  incumbent.tell('all patterns');
  return true;
}
