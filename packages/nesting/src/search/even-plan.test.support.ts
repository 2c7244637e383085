import { randomOfKind } from '../random-kinds.test.support.js';
import { planEntropy } from './plan-entropy.js';
import { sheetsUsed } from './planned.js';
import { manyOfEach, rooted, stockOfAllKinds } from './rooted.test.support.js';

/** Random problems of many of each piece, of stock of all kinds. */
export const problems = randomOfKind(stockOfAllKinds, manyOfEach);

/** The most even plan of as many sheets as first fit takes; undefined where there is none. */
export async function evenPlan(problem: Parameters<typeof rooted>[0]) {
  const set = await rooted(problem, 100);
  if (set === undefined) return undefined;
  const { demand, classes } = set.ground;
  const book = set.request.pool;
  const counts = sheetsUsed(set.start, classes.length);
  const worth = set.request.weights;
  const plan = planEntropy({ book, demand, counts, worth });
  return plan && { ...set, book, demand, counts, worth, plan };
}
