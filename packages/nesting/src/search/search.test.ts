import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { deadlineIn } from '../deadline.js';
import { EVERY_KIND } from '../kinds.test.support.js';
import { leastCost, loadHighs } from '../least-cost.test.support.js';
import { misfits } from '../misfits.js';
import type { StripLister } from '../pattern/strip-lister.js';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { SMALL } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { search } from './search.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

/** Problems of each kind, and seconds for each search: some are stopped. */
const OF_EACH = 12;
const SECONDS = 0.2;

/** A search is of one metal. */
const kinds = EVERY_KIND.filter(({ name }) => !/metals|everything/.test(name));

// Small problems are enumerated before the search comes to much of what large ones need.
describe.each(kinds)('a search without enumeration, with $name', ({ problems }) => {
  it('has a bound that no plan falls short of', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(problems(SMALL), async (problem) => {
        const least = leastCost(highs, problem);
        const best = least === 'cannot be cut' ? Number.POSITIVE_INFINITY : least;
        const { ground, rules, start } = groundOf(problem);
        // What fits nowhere is found before any search.
        fc.pre(misfits(problem, ground.classes, rules, () => false) === undefined);
        const { cost, bound } = await search({
          ground: {
            ...ground,
            everyPattern: () => undefined,
            deadline: deadlineIn(SECONDS, Date.now),
          },
          known: start,
          brief: false,
          seed: 1,
        });
        expect(bound).toBeLessThanOrEqual(best);
        expect(cost).toBeGreaterThanOrEqual(best);
        if (bound === cost) expect(cost).toBe(best);
      }),
      { numRuns: OF_EACH },
    );
  });
});

describe('a search where remnants have a value', () => {
  /** The first phases, each named once in a row; there is no time any more after the last. */
  async function phasesOf(kinds: number, last: string) {
    const strips = [628, 477, 565, 738, 389, 448].slice(0, kinds);
    const { ground, start } = groundOf({
      pieces: strips.map((length, i) => ({
        id: `strip ${i}`,
        length,
        width: i % 2 === 0 ? 62 : 56,
        quantity: 31 + 3 * i,
        mayTurn: true,
      })),
      stock: [
        { kind: 'sheet', id: 'a', length: 1400, width: 1000, price: 650, onHand: 0, canBuy: 'any' },
        { kind: 'sheet', id: 'b', length: 1000, width: 700, price: 350, onHand: 0, canBuy: 'any' },
      ],
      shear: { firstCut: 'either', stages: 2 },
      keep: [{ leastLength: 360, leastWidth: 60, coinsPerMillion: 175, trouble: 5 }],
    });
    const phases: string[] = [];
    const tell = (phase: string) => {
      if (phase !== 'better plan' && phase !== phases.at(-1)) phases.push(phase);
    };
    // What searches to the end lists strips by it.
    const lister = ground.stripLister();
    if (lister === undefined) throw new Error('strips cannot be listed');
    const told: StripLister = {
      price: (values, coin) => {
        tell('to the end');
        return lister.price(values, coin);
      },
      pattern: (face, strips) => lister.pattern(face, strips),
    };
    const minute = deadlineIn(60, Date.now);
    const deadline = { left: () => (phases.includes(last) ? 0 : minute.left()) };
    const { cost, bound } = await search({
      ground: { ...ground, everyPattern: () => undefined, stripLister: () => told, deadline },
      known: start,
      brief: false,
      seed: 1,
      onProgress: ({ phase }) => tell(phase),
    });
    return { phases: phases.slice(0, 4), proven: cost === bound };
  }

  it('seeks a plan before it searches numbers of sheets to the end, and branches before with many kinds', {
    timeout: 90_000,
  }, async () => {
    const many = await phasesOf(6, 'integer master');
    expect(many).toEqual({
      phases: ['linear plan', 'branching', 'integer master', 'branching'],
      proven: false,
    });
    const few = await phasesOf(4, 'no end');
    expect(few).toEqual({
      phases: ['linear plan', 'integer master', 'to the end', 'branching'],
      proven: true,
    });
  });

  it('begins with rough bounds and plans in two stages where patterns take long to price', async () => {
    const twoStages = async (keep: boolean) => {
      const { ground, start } = groundOf({
        pieces: [piece('a', 31, 12, 9), piece('b', 22, 17, 7), piece('c', 41, 9, 5)],
        stock: [sheet('s', 100, 60, { price: 60 }), sheet('t', 70, 40, { price: 31 })],
        shear: { firstCut: 'either', stages: 3 },
        ...(keep
          ? { keep: [{ leastLength: 30, leastWidth: 10, coinsPerMillion: 5_000, trouble: 2 }] }
          : {}),
      });
      const shares: number[] = [];
      const phases: string[] = [];
      let over = false;
      await search({
        ground: {
          ...ground,
          everyPattern: () => undefined,
          deadline: { left: () => (over ? 0 : 100) },
          inTwoStages: async (until) => {
            shares.push(until.left());
            over = true;
            return ground.newBook();
          },
        },
        known: start,
        brief: true,
        seed: 1,
        onProgress: ({ phase }) => phases.push(phase),
      });
      return { shares, before: phases.slice(0, 2) };
    };
    // Two fifths of the time; a search that is slow for want of time does not begin them again.
    expect(await twoStages(true)).toEqual({ shares: [40], before: ['better plan', 'branching'] });
    // Where patterns are priced soon, only if there is no time for them.
    expect((await twoStages(false)).shares).toEqual([]);
  });
});
