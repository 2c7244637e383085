import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../random.js';
import { randomOfKind } from '../random-kinds.test.support.js';
import { BandEntropy } from './band-entropy.js';
import { decimateSheets } from './decimate-sheets.js';
import { EntropySearch } from './entropy-search.js';
import { boxRowOf, type PlanEntropy, planEntropy } from './plan-entropy.js';
import { sheetsUsed } from './planned.js';
import { manyOfEach, rooted, stockOfAllKinds } from './rooted.test.support.js';

const problems = randomOfKind(stockOfAllKinds, manyOfEach);

/** The most even plan of as many sheets as first fit takes; undefined where there is none. */
async function evenPlan(problem: Parameters<typeof rooted>[0]) {
  const set = await rooted(problem, 100);
  if (set === undefined) return undefined;
  const { demand, classes } = set.ground;
  const book = set.request.pool;
  const counts = sheetsUsed(set.start, classes.length);
  const worth = set.request.weights;
  const plan = planEntropy({ book, demand, counts, worth });
  return plan && { ...set, book, demand, counts, worth, plan };
}

/** By row, what the expected numbers come to. */
function sumsOf({ numbers }: PlanEntropy): readonly number[] {
  const sums = new Array<number>(numbers.rows).fill(0);
  numbers.amounts.forEach((amount, column) => {
    for (const [row, count] of numbers.entriesOf(column)) sums[row] += count * amount;
  });
  return sums;
}

const slotsOfPlan = ({ sheets, slots, numbers }: PlanEntropy, book: Book): Float64Array => {
  const counts = new Float64Array(slots.length);
  sheets.forEach((sheet, column) => {
    for (const [slot, copies] of book.sheets[sheet].slots) {
      counts[slots.indexOf(slot)] += copies * numbers.amounts[column];
    }
  });
  return counts;
};
type Book = NonNullable<Awaited<ReturnType<typeof evenPlan>>>['book'];

describe('the most even plan of sheets and bands', () => {
  it('cuts the demand from all the sheets there are, and bands from the slots that they have', async () => {
    const seen = { plans: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(problems, async (problem) => {
        const even = await evenPlan(problem);
        seen[even === undefined ? 'none' : 'plans']++;
        if (even === undefined) return;
        const { plan, demand, counts, book } = even;
        const sums = sumsOf(plan);
        demand.forEach((quantity, piece) => {
          expect(sums[piece] / Math.max(1, quantity)).toBeCloseTo(1, 3);
        });
        plan.slots.forEach((_, index) => {
          expect(sums[demand.length + index]).toBeCloseTo(0, 2);
        });
        for (const pattern of plan.sheets.keys()) {
          const row = boxRowOf(plan, pattern);
          expect(sums[row]).toBeCloseTo(counts[book.sheets[plan.sheets[pattern]].box], 2);
        }
        // What lacks is hardly ever expected, where a linear plan has all.
        const firstLack = plan.sheets.length + plan.bands.length + demand.length;
        const lacking = plan.numbers.amounts.subarray(firstLack, firstLack + demand.length);
        expect(lacking.reduce((sum, amount) => sum + amount, 0)).toBeLessThan(0.05);
      }),
      { numRuns: 25 },
    );
    expect(seen.plans).toBeGreaterThan(10);
  });

  it('is none where there are too few sheets', async () => {
    let tried = 0;
    await fc.assert(
      fc.asyncProperty(problems, async (problem) => {
        const set = await rooted(problem, 100);
        if (set === undefined) return;
        const { demand, classes } = set.ground;
        const counts = classes.map((_, box) => (box === 0 ? 1 : 0));
        if (sheetsUsed(set.start, classes.length).reduce((a, b) => a + b, 0) < 6) return;
        tried++;
        const { pool: book, weights: worth } = set.request;
        expect(planEntropy({ book, demand, counts, worth })).toBeUndefined();
      }),
      { numRuns: 25 },
    );
    expect(tried).toBeGreaterThan(3);
  });
});

describe('the entropy of bands', () => {
  it('is concave in the slots: nowhere above what its slope says of it', async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(problems, fc.nat(1000), async (problem, seed) => {
        const even = await evenPlan(problem);
        if (even === undefined) return;
        const { plan, book, demand } = even;
        const bands = new BandEntropy(book, demand, plan);
        const center = slotsOfPlan(plan, book);
        const here = bands.at(center);
        const random = seededRandom(seed);
        const there = center.map((count) =>
          count > 1e-6 ? count * (0.8 + 0.4 * random()) : count,
        );
        const other = bands.at(there);
        if (here === undefined || other === undefined) return;
        const step = there.map((count, slot) => count - center[slot]);
        const first = step.reduce((sum, count, slot) => sum + here.slope[slot] * count, 0);
        const size = Math.abs(first) + Math.abs(other.entropy) + 1;
        expect((other.entropy - here.entropy - first) / size).toBeLessThan(1e-3);
        compared++;
      }),
      { numRuns: 25 },
    );
    expect(compared).toBeGreaterThan(8);
  });

  it('bends down every way, and not at all with slots that there are none of', async () => {
    const seen = { bent: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(problems, fc.nat(1000), async (problem, which) => {
        const even = await evenPlan(problem);
        if (even === undefined || even.plan.slots.length < 2) return;
        const { plan, book, demand } = even;
        const center = slotsOfPlan(plan, book);
        const size = center.length;
        center[which % size] = 0;
        const model = new BandEntropy(book, demand, plan).at(center);
        if (model === undefined) return;
        const { curvature } = model;
        for (let slot = 0; slot < size; slot++) {
          expect(curvature[slot * size + slot]).toBeGreaterThanOrEqual(0);
          if (curvature[slot * size + slot] > 0) seen.bent++;
          for (let other = 0; other < size; other++) {
            const [one, two] = [curvature[slot * size + other], curvature[other * size + slot]];
            expect(Math.abs(one - two)).toBeLessThan(1e-6 * (1 + Math.abs(one)));
            if (other !== which % size) continue;
            expect(one).toBe(0);
            seen.none++;
          }
        }
      }),
      { numRuns: 25 },
    );
    expect(seen.bent).toBeGreaterThan(20);
    expect(seen.none).toBeGreaterThan(20);
  });
});

describe('settling sheets by decimation', () => {
  it('gives each box its sheets, settled or open, and leaves the plan as it was', async () => {
    const seen = { settled: 0, open: 0 };
    await fc.assert(
      fc.asyncProperty(problems, fc.nat(6), fc.nat(1000), async (problem, left, seed) => {
        const even = await evenPlan(problem);
        if (even === undefined) return;
        const { plan, book, counts } = even;
        const before = [plan.numbers.amounts.slice(), plan.numbers.multipliers.slice()];
        const done = decimateSheets(plan, left, seededRandom(seed));
        expect([plan.numbers.amounts, plan.numbers.multipliers]).toEqual(before);
        const ofBox = counts.map(() => 0);
        for (const pattern of done.sheets) ofBox[book.sheets[plan.sheets[pattern]].box]++;
        for (const box of done.open) ofBox[box]++;
        counts.forEach((count, box) => {
          if (plan.boxes.includes(box)) expect(ofBox[box]).toBe(count);
          else expect(ofBox[box]).toBe(0);
        });
        expect(done.open.length).toBeGreaterThanOrEqual(
          Math.min(left, done.sheets.length + done.open.length),
        );
        seen.settled += done.sheets.length;
        seen.open += done.open.length;
        expect(decimateSheets(plan, left, seededRandom(seed))).toEqual(done);
      }),
      { numRuns: 25 },
    );
    expect(seen.settled).toBeGreaterThan(seen.open);
  });
});

describe('searching sheets by entropy', () => {
  it('gives other whole sheets each time, as many of each box as there are', async () => {
    const seen = { times: 0, room: 0 };
    await fc.assert(
      fc.asyncProperty(problems, fc.nat(1000), async (problem, seed) => {
        const even = await evenPlan(problem);
        if (even === undefined) return;
        const { ground, book, counts, worth, plan } = even;
        const search = EntropySearch.open(ground, book, counts, worth);
        const random = seededRandom(seed);
        const keys = new Set<string>();
        for (let time = 0; time < 3; time++) {
          const found = await search?.next(random);
          if (found === undefined) break;
          const ofBox = counts.map(() => 0);
          found.numbers.forEach((count, sheet) => {
            ofBox[book.sheets[sheet].box] += count;
          });
          counts.forEach((count, box) => {
            expect(ofBox[box]).toBe(plan.boxes.includes(box) ? count : 0);
          });
          expect(keys.has(found.numbers.join())).toBe(false);
          keys.add(found.numbers.join());
          seen.times++;
          if (found.room >= 0) seen.room++;
        }
      }),
      { numRuns: 15 },
    );
    expect(seen.times).toBeGreaterThan(10);
    expect(seen.room).toBeGreaterThan(5);
  });
});
