import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { EVERY_KIND } from './kinds.test.support.js';
import { leastCost, loadHighs } from './least-cost.test.support.js';
import type { CuttingProblem, Shear, Stock } from './problem.js';
import { SMALL } from './random-kinds.test.support.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const mixed = EVERY_KIND.filter(({ name }) => /everything/.test(name)).map(({ problems }) =>
  problems(SMALL),
);
const problems = fc.oneof(...mixed);

function withShear(problem: CuttingProblem, change: Partial<Shear>): CuttingProblem {
  return { ...problem, shear: { ...problem.shear, ...change } };
}

function without(problem: CuttingProblem, ...fields: (keyof Shear)[]): CuttingProblem {
  const kept = Object.entries(problem.shear).filter(
    ([name]) => !fields.includes(name as keyof Shear),
  );
  return { ...problem, shear: { firstCut: 'either', ...Object.fromEntries(kept) } };
}

function cost(problem: CuttingProblem): number {
  const least = leastCost(highs, problem);
  return least === 'cannot be cut' ? Number.POSITIVE_INFINITY : least;
}

/** Over random problems: each costs at most as much as the next, and once at least it costs less. */
function ascending(versions: (problem: CuttingProblem) => readonly CuttingProblem[]): void {
  let less = 0;
  fc.assert(
    fc.property(problems, (problem) => {
      const costs = versions(problem).map(cost);
      expect(costs).toEqual([...costs].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0)));
      if (costs[0] < costs[costs.length - 1]) less++;
    }),
    { numRuns: 80 },
  );
  expect(less).toBeGreaterThan(0);
}

describe('the least cost by trying every cut never grows', () => {
  it('with the stages', () => {
    ascending((problem) => {
      const either = withShear(problem, { firstCut: 'either' });
      return (['free', 3, 2] as const).map((stages) => withShear(either, { stages }));
    });
  });

  it('with the choice of the first cut', () => {
    ascending((problem) =>
      (['either', 'along'] as const).map((firstCut) => withShear(problem, { firstCut })),
    );
    ascending((problem) =>
      (['either', 'across'] as const).map((firstCut) => withShear(problem, { firstCut })),
    );
  });

  it('with the leave to turn', () => {
    ascending((problem) =>
      [true, false].map((mayTurn) => ({
        ...problem,
        pieces: problem.pieces.map((piece) => ({ ...piece, mayTurn })),
      })),
    );
  });

  it('with a longer reach of the shear', () => {
    ascending((problem) => [
      without(problem, 'longestCut'),
      ...[12, 10, 8].map((longestCut) => withShear(problem, { longestCut })),
    ]);
  });

  it('with a narrower hold', () => {
    ascending((problem) => [
      without(problem, 'narrowestStrip'),
      ...[1, 2, 3].map((narrowestStrip) => withShear(problem, { narrowestStrip })),
    ]);
  });

  it('with a thinner blade, where slivers are allowed', () => {
    // A wider kerf may be just what takes away a sliver that must not be parted.
    ascending((problem) => {
      const bare = without(problem, 'narrowestStrip', 'kerf', 'trim');
      return [bare, ...[1, 2].map((kerf) => withShear(bare, { kerf }))];
    });
  });

  it('with a smaller trim of the edges, where every cut can be made', () => {
    // Trimmed, a sheet may be short enough for the shear, or have no sliver left beside its pieces.
    ascending((problem) => {
      const bare = without(problem, 'narrowestStrip', 'longestCut', 'kerf', 'trim');
      return [bare, ...[1, 2].map((trim) => withShear(bare, { trim }))];
    });
  });

  it('with one offcut more', () => {
    ascending((problem) => {
      const [first] = problem.stock;
      const { kind: _, ...like } = first;
      const more: Stock = { kind: 'offcut', length: 7, width: 7, id: 'more', ...metalOf(like) };
      return [{ ...problem, stock: [...problem.stock, more] }, problem];
    });
  });
});

function metalOf({ metal, thickness }: Pick<Stock, 'metal' | 'thickness'>) {
  return {
    ...(metal === undefined ? {} : { metal }),
    ...(thickness === undefined ? {} : { thickness }),
  };
}
