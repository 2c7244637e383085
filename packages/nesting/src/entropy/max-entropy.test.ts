import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factorInPlace } from './cholesky.js';
import { type EntropyColumn, MaxEntropy } from './max-entropy.js';

const EXACTLY = { near: 1e-12, steps: 200 };

/** The entropy of a geometric distribution with an expected number. */
const entropyOf = (amount: number) =>
  amount === 0 ? 0 : (1 + amount) * Math.log1p(amount) - amount * Math.log(amount);

/** The logarithm of how many whole plans there are, by a Gaussian about the most even one. */
function logOfPlans(plan: MaxEntropy, entropy: number): number {
  const rows = [...Array(plan.rows).keys()];
  const inverse = plan.curvature(rows);
  expect(factorInPlace(inverse, rows.length)).toBe(true);
  // The determinant of the covariance is that of the curvature, turned round.
  const halfLog = rows.reduce((sum, row) => sum - Math.log(inverse[row * rows.length + row]), 0);
  return entropy - halfLog - (rows.length / 2) * Math.log(2 * Math.PI);
}

const choose = (n: number, k: number) => {
  let product = 1;
  for (let i = 1; i <= k; i++) product = (product * (n - k + i)) / i;
  return product;
};

const columnsOf = (rows: number) =>
  fc.array(
    fc.record({
      counts: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: rows, maxLength: rows }),
      energy: fc.double({ min: 0.01, max: 2, noNaN: true }),
      amount: fc.double({ min: 0.05, max: 4, noNaN: true }),
    }),
    { minLength: rows + 2, maxLength: 14 },
  );
const plans = fc.integer({ min: 1, max: 4 }).chain((rows) =>
  columnsOf(rows)
    .filter((columns) => columns.every(({ counts }) => counts.some((count) => count > 0)))
    .map((columns) => ({ rows, columns })),
);

function opened({ rows, columns }: { rows: number; columns: readonly Column[] }) {
  const entries = columns.map(
    ({ counts, energy }): EntropyColumn => ({
      entries: counts.flatMap((count, row) => (count > 0 ? [[row, count] as const] : [])),
      energy,
    }),
  );
  const right = Array.from({ length: rows }, (_, row) =>
    columns.reduce((sum, { counts, amount }) => sum + counts[row] * amount, 0),
  );
  return { plan: new MaxEntropy(rows, entries), right };
}

interface Column {
  readonly counts: readonly number[];
  readonly energy: number;
  readonly amount: number;
}

describe('the most even plan', () => {
  it('shares out alike what is alike', () => {
    const column = { entries: [[0, 1]], energy: 0 } as const;
    const plan = new MaxEntropy(1, [column, column, column, column]);
    plan.multipliers[0] = 1;
    expect(plan.solve([10], EXACTLY)).toBeCloseTo(4 * entropyOf(2.5), 9);
    for (const amount of plan.amounts) expect(amount).toBeCloseTo(2.5, 9);
  });

  // Stars and bars; Barvinok and Hartigan 2010 prove that the estimate becomes exact.
  it.each([
    [30, 60],
    [40, 400],
    [60, 600],
  ])('tells how many ways there are to part into %i numbers that sum to %i', (parts, sum) => {
    const plan = new MaxEntropy(
      1,
      Array.from({ length: parts }, () => ({ entries: [[0, 1]], energy: 0 }) as const),
    );
    plan.multipliers[0] = 1;
    const entropy = plan.solve([sum], EXACTLY) ?? Number.NaN;
    const exact = Math.log(choose(sum + parts - 1, parts - 1));
    expect(Math.abs(logOfPlans(plan, entropy) - exact)).toBeLessThan(0.02);
  });

  // MacMahon's formula for 3 by 3 squares of whole numbers, all rows and columns of which sum
  // to r (Stanley, "Enumerative Combinatorics 1", 4.6; from memory).
  it.each([8, 20, 50])('tells how many squares of nine numbers sum to %i every way', (r) => {
    const cells = Array.from({ length: 9 }, (_, cell): EntropyColumn => {
      const [row, column] = [Math.floor(cell / 3), cell % 3];
      // The last column follows from the rest.
      return {
        entries:
          column < 2
            ? [
                [row, 1],
                [3 + column, 1],
              ]
            : [[row, 1]],
        energy: 0,
      };
    });
    const plan = new MaxEntropy(5, cells);
    plan.multipliers.fill(1);
    const entropy = plan.solve([r, r, r, r, r], EXACTLY) ?? Number.NaN;
    const exact = choose(r + 2, 4) + choose(r + 3, 4) + choose(r + 4, 4);
    // So few numbers are not quite a Gaussian: the estimate comes out a tenth too low.
    expect(Math.exp(logOfPlans(plan, entropy)) / exact).toBeGreaterThan(0.85);
    expect(Math.exp(logOfPlans(plan, entropy)) / exact).toBeLessThan(0.95);
  });

  it('keeps to the right-hand side, and none that does has more entropy', () => {
    fc.assert(
      fc.property(plans, (some) => {
        const { plan, right } = opened(some);
        const entropy = plan.solve(right, EXACTLY) ?? Number.NaN;
        right.forEach((value, row) => {
          const sum = some.columns.reduce(
            (s, { counts }, i) => s + counts[row] * plan.amounts[i],
            0,
          );
          expect(sum).toBeCloseTo(value, 4);
        });
        const total = (amount: (column: number) => number) =>
          some.columns.reduce(
            (s, { energy }, i) => s + entropyOf(amount(i)) - energy * amount(i),
            0,
          );
        expect(total((column) => plan.amounts[column])).toBeCloseTo(entropy, 4);
        expect(total((column) => some.columns[column].amount)).toBeLessThan(entropy + 1e-6);
      }),
    );
  });

  it('says how the multipliers change with the right-hand side', () => {
    fc.assert(
      fc.property(plans, fc.nat(3), (some, which) => {
        const { plan, right } = opened(some);
        const row = which % some.rows;
        plan.solve(right, EXACTLY);
        const before = plan.multipliers.slice();
        const rows = [...Array(some.rows).keys()];
        const curvature = plan.curvature(rows);
        const step = 1e-4;
        plan.solve(
          right.map((value, other) => (other === row ? value + step : value)),
          EXACTLY,
        );
        const scale = Math.max(1, ...curvature.map(Math.abs));
        for (const other of rows) {
          const change = (plan.multipliers[other] - before[other]) / step;
          expect((change + curvature[row * some.rows + other]) / scale).toBeCloseTo(0, 2);
        }
      }),
    );
  });

  it('is the same with rows apart, which no column may reach two of', () => {
    const apart = plans.filter(
      ({ rows, columns }) =>
        rows > 1 && columns.some(({ counts }) => counts.slice(1).some((count) => count > 0)),
    );
    fc.assert(
      fc.property(apart, fc.array(fc.boolean(), { maxLength: 14 }), ({ rows, columns }, off) => {
        const isOff = (column: number) => column > 2 && off[column] === true;
        // Of all rows but the first, each column keeps one; what is not active is not counted.
        const some = columns.map((column, index) => {
          const kept = 1 + (index % (rows - 1));
          const counts = column.counts.map((count, row) =>
            row === 0 ? Math.max(1, count) : row === kept ? Math.max(1, count) : 0,
          );
          return { ...column, counts, amount: isOff(index) ? 0 : column.amount };
        });
        const { plan: dense, right } = opened({ rows, columns: some });
        const entries = some.map((_, column) => dense.entriesOf(column));
        const quick = new MaxEntropy(
          rows,
          some.map(({ energy }, column) => ({ entries: entries[column], energy })),
          1,
        );
        // Rows that no active column reaches are left out of both.
        some.forEach((_, column) => {
          if (!isOff(column)) return;
          dense.active[column] = 0;
          quick.active[column] = 0;
        });
        const entropy = dense.solve(right, EXACTLY) ?? Number.NaN;
        expect(quick.solve(right, EXACTLY)).toBeCloseTo(entropy, 6);
        dense.amounts.forEach((amount, column) => {
          expect(quick.amounts[column]).toBeCloseTo(amount, 3);
        });
        const all = [...Array(rows).keys()];
        const curvature = quick.curvature(all);
        const scale = Math.max(1, ...curvature.map(Math.abs));
        dense.curvature(all).forEach((value, cell) => {
          expect(curvature[cell] / scale).toBeCloseTo(value / scale, 3);
        });
      }),
    );
    const entries: EntropyColumn['entries'] = [
      [1, 1],
      [2, 1],
    ];
    expect(() => new MaxEntropy(3, [{ entries, energy: 1 }], 1)).toThrow(RangeError);
    expect(() => new MaxEntropy(3, [{ entries, energy: 1 }], 2)).not.toThrow();
  });

  it('leaves out columns that are not active, and rows that none of the others reaches', () => {
    const plan = new MaxEntropy(2, [
      { entries: [[0, 1]], energy: 0 },
      { entries: [[0, 2]], energy: 0 },
      { entries: [[1, 1]], energy: 0 },
    ]);
    plan.multipliers.fill(1);
    plan.active[1] = 0;
    plan.active[2] = 0;
    expect(plan.solve([3, 99], EXACTLY)).toBeCloseTo(entropyOf(3), 9);
    expect([...plan.amounts].map((amount) => Math.round(amount * 1e9) / 1e9)).toEqual([3, 0, 0]);
    expect([...plan.curvature([1])]).toEqual([0]);
  });

  it('takes what a column loses as it is set last', () => {
    const plan = new MaxEntropy(1, [
      { entries: [[0, 1]], energy: 0 },
      { entries: [[0, 1]], energy: 0 },
    ]);
    plan.multipliers[0] = 1;
    plan.setEnergy(1, 5);
    plan.solve([4], EXACTLY);
    expect(plan.amounts[0]).toBeGreaterThan(10 * plan.amounts[1]);
    expect(plan.entriesOf(1)).toEqual([[0, 1]]);
  });

  it('starts only where every active column loses something', () => {
    const plan = new MaxEntropy(1, [{ entries: [[0, 1]], energy: 0 }]);
    expect(plan.solve([1], EXACTLY)).toBeUndefined();
    plan.multipliers[0] = -1;
    expect(plan.solve([1], EXACTLY)).toBeUndefined();
  });

  it('gives up when it is over', () => {
    const plan = new MaxEntropy(1, [{ entries: [[0, 1]], energy: 0 }]);
    plan.multipliers[0] = 5;
    let asked = 0;
    expect(plan.solve([7], { ...EXACTLY, over: () => ++asked > 2 })).toBeUndefined();
    expect(asked).toBe(3);
  });
});
