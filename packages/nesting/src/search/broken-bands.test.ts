import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random.js';
import { brokenBands, openBands, wholeBands } from './broken-bands.js';

const amounts = fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { maxLength: 12 });

describe('bands of a linear plan', () => {
  it('are broken where more is cut than is settled, the likeliest mostly first', () => {
    const answer = { bands: [0.2, 3, 2.9, 0, 1] };
    const master = { bands: [0, 3, 2] };
    const first = new Map<number, number>();
    for (let seed = 0; seed < 200; seed++) {
      const broken = brokenBands(master, answer, seededRandom(seed * 7919));
      expect([...broken].sort()).toEqual([0, 2, 4]);
      first.set(broken[0], (first.get(broken[0]) ?? 0) + 1);
    }
    expect(first.get(0) ?? 0).toBe(0);
    expect(first.get(2) ?? 0).toBeGreaterThan(20);
    expect(first.get(4) ?? 0).toBeGreaterThan(first.get(2) ?? 0);
  });

  it('are open by as much as is not settled', () => {
    fc.assert(
      fc.property(amounts, (bands) => {
        const settled = bands.map(Math.floor);
        const rest = bands.reduce((sum, amount) => sum + (amount % 1), 0);
        expect(openBands({ bands: settled }, { bands })).toBeCloseTo(rest, 9);
        expect(openBands({ bands: [] }, { bands: settled })).toBe(
          settled.reduce((sum, count) => sum + count, 0),
        );
      }),
    );
  });

  it('are whole from one on, each told of once and in an order of chance', () => {
    const orders = new Set<string>();
    for (let seed = 0; seed < 50; seed++) {
      const whole = wholeBands({ bands: [1, 0.999, 2.5, 0, 7] }, seededRandom(seed * 7919));
      expect([...whole].sort()).toEqual([0, 2, 4]);
      orders.add(whole.join());
    }
    expect(orders.size).toBe(6);
  });
});
