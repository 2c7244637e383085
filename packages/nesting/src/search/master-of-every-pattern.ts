import { solvePatternMaster } from '../master/pattern-master.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';

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
  const patterns = ground.everyPattern();
  if (patterns === undefined) return false;
  const { measure } = incumbent;
  effort.integerMasters++;
  const answer = await solvePatternMaster(
    { classes, demand, measure, patterns, engines },
    deadline.left(),
  );
  if (answer === 'stopped') return false;
  if (answer !== 'infeasible') {
    const planned = patterns.map((pattern, i) => ({ pattern, count: answer.counts[i] }));
    incumbent.offer(planned.filter(({ count }) => count > 0));
    // Nothing is believed: a plan that comes out dearer than the master said proves nothing.
    if (incumbent.cost > answer.cost) return false;
  }
  incumbent.prove();
  incumbent.tell('all patterns');
  return true;
}
