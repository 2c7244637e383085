import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { leastCost, loadHighs } from '../least-cost.test.support.js';
import { randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { Incumbent } from './incumbent.js';
import { ruleOutCost } from './rule-out-cost.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

describe('ruling out a cost', () => {
  it('proves no plan best that can be bettered, and most of those that cannot', async () => {
    const features = {
      limitedStock: true,
      offcuts: true,
      bookValues: true,
      packs: true,
      kerf: true,
    };
    const seen = { best: 0, proven: 0, bettered: 0 };
    await fc.assert(
      fc.asyncProperty(randomOfKind(features, SMALL), async (problem) => {
        const { ground, start } = groundOf(problem);
        if (ground.classes.length === 0 || start === undefined) return;
        const least = leastCost(highs, problem);
        const incumbent = new Incumbent(ground, {});
        incumbent.offer(start);
        const { cost } = incumbent;
        const ruledOut = await ruleOutCost(
          ground,
          incumbent,
          ground.demand.map(() => 1),
        );
        expect(incumbent.cost).toBeGreaterThanOrEqual(least as number);
        if (cost > (least as number)) {
          expect(ruledOut).toBe(false);
          if (incumbent.cost < cost) seen.bettered++;
          return;
        }
        seen.best++;
        if (ruledOut) seen.proven++;
      }),
      { numRuns: 150 },
    );
    expect(seen.bettered).toBeGreaterThan(10);
    expect(seen.best).toBeGreaterThan(30);
    expect(seen.proven).toBeGreaterThan(0.8 * seen.best);
  });
});
