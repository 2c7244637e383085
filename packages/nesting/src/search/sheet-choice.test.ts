import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../pattern/part.js';
import { seededRandom } from '../random.js';
import type { Planned } from './planned.js';
import { SheetChoice } from './sheet-choice.js';

/** A pattern that is told from others by what it keeps. */
const pattern = (kept: number): Pattern => ({
  stockClass: 0,
  part: { kind: 'lay', piece: 0, turned: false },
  counts: [[0, 1]],
  kept,
});

const plans = fc
  .array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 8 })
  .map((counts): readonly Planned[] =>
    counts.map((count, index) => ({ pattern: pattern(index), count })),
  );
const total = (planned: readonly Planned[]) => planned.reduce((sum, { count }) => sum + count, 0);

describe('SheetChoice', () => {
  it('parts a plan into what is freed and the rest', () => {
    fc.assert(
      fc.property(plans, fc.nat(20), fc.nat(), (planned, wanted, seed) => {
        const choice = new SheetChoice(seededRandom(seed), ({ kept }) => kept);
        const { rest, freed } = choice.chooseSome(planned, wanted);
        expect(freed).toHaveLength(Math.min(wanted, total(planned)));
        for (const { pattern: one, count } of planned) {
          const left = rest.find((other) => other.pattern === one)?.count ?? 0;
          expect(left + freed.filter((other) => other === one).length).toBe(count);
        }
      }),
    );
  });

  it('frees sheets that waste more the likelier, and those that waste nothing too', () => {
    const planned = [0, 1, 4].map((kept) => ({ pattern: pattern(kept), count: 1 }));
    const choice = new SheetChoice(seededRandom(5), ({ kept }) => kept);
    const times = new Map<number, number>();
    for (let i = 0; i < 3000; i++) {
      const [{ kept }] = choice.chooseSome(planned, 1).freed;
      times.set(kept, (times.get(kept) ?? 0) + 1);
    }
    const [none, some, much] = [0, 1, 4].map((kept) => times.get(kept) ?? 0);
    // The weights are 0.5, 1.5 and 4.5, of which the largest is drawn in 9 of 13 cases.
    expect(much / 3000).toBeCloseTo(9 / 13, 1);
    expect(some / 3000).toBeCloseTo(3 / 13, 1);
    expect(none / 3000).toBeCloseTo(1 / 13, 1);
  });

  it('frees more where that was solved, and is exhausted once all were solved often', () => {
    const planned = [{ pattern: pattern(0), count: 3 }];
    const choice = new SheetChoice(seededRandom(1), () => 0);
    for (let i = 0; i < 4; i++) {
      expect(choice.exhausted).toBe(false);
      expect(choice.choose(planned).freed).toHaveLength(3);
      expect(choice.shaken).toBeDefined();
      choice.learn(true);
    }
    expect(choice.exhausted).toBe(true);
    const large = new SheetChoice(seededRandom(1), () => 0);
    const many = [{ pattern: pattern(0), count: 50 }];
    expect(large.choose(many).freed).toHaveLength(4);
    expect(large.shaken).toBeUndefined();
    for (let i = 0; i < 5; i++) large.learn(false);
    expect(large.choose(many).freed).toHaveLength(2);
    for (let i = 0; i < 100; i++) large.learn(true);
    expect(large.choose(many).freed).toHaveLength(7);
  });
});
