import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import { money, totalCost } from '../master/objective.js';
import { legal } from '../pattern/legal.js';
import type { PatternPricer } from '../pattern/pattern-pricer.js';
import { offcut, piece, sheet } from '../plan-cutting.test.support.js';
import { seededRandom } from '../random.js';
import { LARGE, randomOfKind } from '../random-kinds.test.support.js';
import { cover } from './cover.js';
import { coverBySettling } from './cover-by-settling.js';
import type { SearchGround } from './ground.js';
import { groundOf } from './ground.test.support.js';
import { guideOf } from './guide.js';
import { demandLeft, type Planned, sheetsUsed } from './planned.js';

const size = { ...LARGE, total: 80, pieceTypes: 4 };
const two = { limitedStock: true, offcuts: true } as const;
const any = { stages: 'any', kerf: true, offcuts: true, longestCut: true } as const;

/** The ground of a problem with its linear plan; undefined where first fit cannot cut it. */
async function rooted(problem: Parameters<typeof groundOf>[0]) {
  const { start, ...set } = groundOf(problem);
  const { ground } = set;
  if (start === undefined) return undefined;
  for (const { pattern } of start) ground.book.addPattern(pattern);
  const master = new BandMaster(ground);
  try {
    const root = await solveLinear({ ...ground, master, enough: () => false });
    return { ...set, start, root, guide: guideOf(ground, root) };
  } finally {
    master.close();
  }
}

function costOf({ ground }: { ground: SearchGround }, planned: readonly Planned[]): number {
  return totalCost(ground.classes, sheetsUsed(planned, ground.classes.length), money);
}

/**
 * Checks that a plan keeps to a cost and to the stock, and that all it asks can be cut.
 * @returns whether it cuts all that is wanted
 */
function soundAndWhole(
  { ground, boxes, rules }: NonNullable<Awaited<ReturnType<typeof rooted>>>,
  planned: readonly Planned[],
  atMost: number,
): boolean {
  expect(costOf({ ground }, planned)).toBeLessThanOrEqual(atMost);
  for (const { pattern, count } of planned) {
    expect(count).toBeGreaterThan(0);
    expect(legal(pattern.part, boxes[pattern.stockClass], rules)).toBe(true);
  }
  return demandLeft(ground.demand, planned).every((count) => count === 0);
}

describe('covering', () => {
  it('prices no more patterns once its time is over', async () => {
    const stock = [sheet('s', 100, 60), offcut('A', 50, 40)];
    const pieces = [piece('a', 31, 12, 9), piece('b', 22, 17, 7), piece('c', 41, 9, 5)];
    const set = groundOf({ pieces, stock, shear: { firstCut: 'either', stages: 3 } });
    const pricings = async (most: number) => {
      let asked = 0;
      const pricerFor = (demand: readonly number[]): PatternPricer => {
        const pricer = set.ground.pricerFor(demand);
        return {
          price: (...values) => {
            asked++;
            return pricer.price(...values);
          },
        };
      };
      const deadline = { left: () => (asked < most ? 60 : 0) };
      const { planned } = await cover(
        { ...set.ground, pricerFor, deadline },
        {
          demand: set.ground.demand,
          classes: set.ground.classes,
          caps: [],
          weights: undefined,
          seeds: (set.start ?? []).map(({ pattern }) => pattern),
          nodes: 100,
          shaken: seededRandom(1),
        },
      );
      return { asked, found: planned !== undefined };
    };
    const all = await pricings(Number.POSITIVE_INFINITY);
    expect(all.found).toBe(true);
    // Whether the integer master still finds a plan when its time is over is for the engine.
    const late = await pricings(all.asked - 8);
    expect(late.asked).toBe(all.asked - 8);
  });
});

describe('covering by settling bands', () => {
  it('keeps to its caps and to what can be cut, and cuts all where the caps leave room', async () => {
    const seen = { whole: 0, partly: 0 };
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(randomOfKind(two, size), randomOfKind(any, size)),
        fc.constantFrom(60, 110),
        fc.nat(1000),
        async (problem, percent, seed) => {
          const set = await rooted({ ...problem, keep: [] });
          if (set === undefined) return;
          const { ground, start, guide } = set;
          const atMost = Math.floor((costOf(set, start) * percent) / 100);
          const { weights, losses, likely } = guide;
          const covered = await coverBySettling(ground, {
            demand: ground.demand,
            classes: ground.classes,
            caps: [{ measure: money, atMost }],
            weights,
            losses,
            likely,
            seeds: start.map(({ pattern }) => pattern),
            cutoff: undefined,
            random: seededRandom(seed),
          });
          // Bands may have been settled for which there are no whole sheets.
          if (covered?.planned === undefined) return;
          if (soundAndWhole(set, covered.planned, atMost)) seen.whole++;
          else seen.partly++;
        },
      ),
      { numRuns: 40 },
    );
    expect(seen.whole).toBeGreaterThan(8);
    expect(seen.partly).toBeGreaterThan(4);
  });
});
