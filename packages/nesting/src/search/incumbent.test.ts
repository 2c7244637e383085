import { describe, expect, it } from 'vitest';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { groundOf } from './ground.test.support.js';
import { Incumbent } from './incumbent.js';

/** Five pieces that fill a large sheet, or three a small one. */
function started() {
  const { ground, start } = groundOf({
    pieces: [piece('a', 10, 10, 30)],
    stock: [sheet('large', 50, 10, { price: 5 }), sheet('small', 30, 10, { price: 3 })],
    shear: { firstCut: 'either' },
  });
  if (start === undefined) throw new Error('no first plan');
  const told: number[] = [];
  const incumbent = new Incumbent(ground, { onBetter: (_, bound) => told.push(bound) });
  return { ground, start, incumbent, told };
}

describe('Incumbent', () => {
  it('takes plans that cut all and cost less, and counts their cost anew', () => {
    const { ground, start, incumbent, told } = started();
    expect(incumbent.planned).toBeUndefined();
    incumbent.offer(undefined);
    incumbent.offer(start.slice(1));
    expect(incumbent.cost).toBe(Number.POSITIVE_INFINITY);
    // 31 pieces' worth of sheets: one large more than needed.
    const [first] = start;
    incumbent.offer([...start, { ...first, count: 1 }]);
    const dear = incumbent.cost;
    incumbent.offer(start);
    expect(incumbent.cost).toBeLessThan(dear);
    incumbent.offer([...start, { ...first, count: 1 }]);
    expect(incumbent.planned).toBe(start);
    expect(told).toHaveLength(2);
    expect(ground.demand).toEqual([30]);
  });

  it('rounds the bound up to what sheets can cost, and knows when it is met', () => {
    const { ground, start, incumbent } = started();
    incumbent.offer(start);
    expect(incumbent.cost).toBe(30);
    incumbent.raise(28.5 * ground.scale);
    expect(incumbent.bound).toBe(29);
    expect(incumbent.met).toBe(false);
    incumbent.raise(20 * ground.scale);
    expect(incumbent.bound).toBe(29);
    expect(incumbent.wouldMeet(29.01 * ground.scale)).toBe(true);
    incumbent.raise(29.01 * ground.scale);
    expect(incumbent.met).toBe(true);
    expect(incumbent.bound).toBe(30);
  });

  it('aims below the best plan, and no lower than the bound', () => {
    const { ground, start, incumbent } = started();
    const [first] = start;
    incumbent.offer([...start, { ...first, count: 2 }]);
    const { cost } = incumbent;
    incumbent.raise((cost - 8) * ground.scale);
    // Sums of 5 and 3: every number from 8 on.
    expect(incumbent.target).toBe(cost - 1);
    expect(incumbent.costFrom(0)).toBe(cost - 8);
    expect(incumbent.costFrom(cost - 5.5)).toBe(cost - 5);
    expect(incumbent.costFrom(cost + 100)).toBe(cost - 1);
    expect(incumbent.aim(1)).toBe(cost - 1);
    expect(incumbent.aim(0)).toBe(Math.ceil((cost - 8 + cost - 1) / 2));
    expect(incumbent.manyCosts).toBe(true);
    incumbent.raise((cost - 2) * ground.scale);
    expect(incumbent.manyCosts).toBe(false);
    expect(incumbent.costFrom(cost - 8)).toBe(cost - 2);
  });

  it('takes no plan that costs more than is of use, and knows when there can be none', () => {
    const { ground, start } = started();
    for (const atMost of [29, 30]) {
      const incumbent = new Incumbent(ground, { atMost });
      incumbent.offer(start);
      expect(incumbent.cost).toBe(atMost < 30 ? Number.POSITIVE_INFINITY : 30);
      incumbent.raise(atMost * ground.scale);
      expect(incumbent.impossible).toBe(false);
      incumbent.raise((atMost + 0.5) * ground.scale);
      expect(incumbent.impossible).toBe(true);
      expect(incumbent.bound).toBe(atMost < 30 ? Number.POSITIVE_INFINITY : 30);
    }
  });

  it('holds a plan for proven where every pattern was searched', () => {
    const { start, incumbent } = started();
    incumbent.offer(start);
    expect(incumbent.met).toBe(false);
    incumbent.prove();
    expect(incumbent.met).toBe(true);
    expect(incumbent.bound).toBe(incumbent.cost);
  });
});
