import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import { money, totalCost } from '../master/objective.js';
import { LARGE } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { guideOf } from './guide.js';
import { likelyBook } from './listed-masters.js';
import { sheetsUsed } from './planned.js';

/** Random problems of many of each piece, for `randomOfKind`. */
export const manyOfEach = { ...LARGE, total: 80, pieceTypes: 4 };
export const stockOfAllKinds = { limitedStock: true, offcuts: true, packs: true } as const;

type Problem = Parameters<typeof groundOf>[0];

/**
 * What a search knows after the linear plan; undefined where it has nothing to start from.
 * @param percent of what first fit costs that a plan may
 */
export async function rooted(problem: Problem, percent: number) {
  const { ground, start, boxes, rules } = groundOf({ ...problem, keep: [] });
  if (start === undefined) return undefined;
  for (const { pattern } of start) ground.book.addPattern(pattern);
  const master = new BandMaster(ground);
  try {
    const root = await solveLinear({ ...ground, master, enough: () => false });
    const dearest = Math.max(...root.bound.classCost.map((cost) => cost / ground.scale));
    const pool = likelyBook(ground, root, dearest / 2, 3000);
    if (pool === undefined) return undefined;
    const costOf = (used: readonly number[]) => totalCost(ground.classes, used, money);
    const atMost = Math.floor((costOf(sheetsUsed(start, boxes.length)) * percent) / 100);
    const guide = guideOf(ground, root);
    const { weights } = guide;
    const mean = weights.reduce((sum, weight) => sum + weight, 0) / weights.length;
    const losses = weights.map((weight) => weight / mean);
    const request = { pool, caps: [{ measure: money, atMost }], losses, weights };
    return { ground, boxes, rules, start, guide, request, atMost, costOf };
  } finally {
    master.close();
  }
}
