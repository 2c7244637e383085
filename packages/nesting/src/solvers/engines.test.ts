import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkAnswer } from './check-answer.js';
import { type Engines, Master } from './engine-choice.js';
import { loadHighsEngine } from './highs-engine.js';
import { javascriptEngine } from './javascript-engine.js';
import type { Answer, Engine, LinearModel, LinearRow, SolveLimits } from './linear-model.js';

/** Covering problems like small cutting masters: demands, patterns, some limits. */
const coveringModel = modelOf('at least');
/** The same with rows of every sense. */
const anyModel = modelOf('at least', 'at most', 'exactly');

function modelOf(...senses: readonly LinearRow['sense'][]): fc.Arbitrary<LinearModel> {
  return fc
    .record({ rows: fc.integer({ min: 1, max: 6 }), columns: fc.integer({ min: 1, max: 14 }) })
    .chain(({ rows, columns }) =>
      fc.record({
        rows: fc.array(fc.record({ sense: fc.constantFrom(...senses), bound: fc.nat(20) }), {
          minLength: rows,
          maxLength: rows,
        }),
        columns: fc.array(
          fc
            .record({
              cost: fc.integer({ min: 1, max: 9 }),
              upper: fc.constantFrom(Number.POSITIVE_INFINITY, 3, 8),
              entries: fc.array(fc.nat(4), { minLength: rows, maxLength: rows }),
            })
            .map(({ cost, upper, entries }) => {
              const used = entries.flatMap((value, row) => (value > 0 ? [row] : []));
              return { cost, upper, rows: used, coefficients: used.map((row) => entries[row]) };
            }),
          { minLength: columns, maxLength: columns },
        ),
      }),
    );
}

function solveWith(engine: Engine, model: LinearModel, limits: SolveLimits): Answer {
  const session = engine.open(model.rows);
  session.add(model.columns);
  const answer = session.solve(limits);
  session.close();
  return answer;
}

/** Expects that both engines say the same, and what is right. */
function expectToAgree(highs: Engine, model: LinearModel, integer: boolean): void {
  const limits = { integer, seconds: 5 };
  const theirs = solveWith(highs, model, limits);
  const ours = solveWith(javascriptEngine, model, limits);
  expect(ours.status).toBe(theirs.status);
  if (theirs.status !== 'optimal' || ours.status !== 'optimal') return;
  expect(ours.objective).toBeCloseTo(theirs.objective, 6);
  expect(checkAnswer(model, theirs, integer).status).toBe('optimal');
  expect(checkAnswer(model, ours, integer).status).toBe('optimal');
}

describe('the engines', () => {
  let highs: Engine;
  beforeAll(async () => {
    highs = await loadHighsEngine();
  });

  it('HiGHS gives the best answer up to the cutoff, and none above', () => {
    let cut = 0;
    fc.assert(
      fc.property(coveringModel, fc.integer({ min: -3, max: 3 }), (model, off) => {
        const best = solveWith(highs, model, { integer: true, seconds: 5 });
        if (best.status !== 'optimal') return;
        const cutoff = best.objective + off + 0.5;
        const answer = solveWith(highs, model, { integer: true, seconds: 5, cutoff });
        if (off >= 0) {
          if (answer.status !== 'optimal') throw new Error(answer.status);
          expect(answer.objective).toBeCloseTo(best.objective, 6);
        } else {
          expect(answer.status).toBe('infeasible');
          cut++;
        }
      }),
      { numRuns: 150 },
    );
    expect(cut).toBeGreaterThan(20);
  });

  it.each([true, false])('agree on status and objective (integer: %s)', (integer) => {
    fc.assert(
      fc.property(anyModel, (model) => {
        expectToAgree(highs, model, integer);
      }),
      { numRuns: 300 },
    );
  });

  it('give duals of the right sign that prove the objective', () => {
    const signs = { above: 0, below: 0 };
    fc.assert(
      fc.property(anyModel, fc.boolean(), (model, small) => {
        const engine = small ? javascriptEngine : highs;
        const answer = solveWith(engine, model, { integer: false, seconds: 5 });
        if (answer.status !== 'optimal') return;
        // Weak duality: no column's reduced cost may fall below 0 except at its upper bound.
        let proven = model.rows.reduce((sum, row, i) => sum + row.bound * answer.duals[i], 0);
        for (const column of model.columns) {
          const worth = column.rows.reduce(
            (sum, row, k) => sum + column.coefficients[k] * answer.duals[row],
            0,
          );
          const gain = Math.max(0, worth - column.cost);
          if (gain > 1e-7) proven -= gain * column.upper;
        }
        for (const [i, { sense }] of model.rows.entries()) {
          if (sense !== 'at most') signs.above = Math.max(signs.above, answer.duals[i]);
          if (sense === 'exactly') signs.below = Math.min(signs.below, answer.duals[i]);
          if (sense === 'at least') expect(answer.duals[i]).toBeGreaterThanOrEqual(-1e-7);
          if (sense === 'at most') expect(answer.duals[i]).toBeLessThanOrEqual(1e-7);
        }
        expect(proven).toBeCloseTo(answer.objective, 5);
      }),
      { numRuns: 400 },
    );
    expect(signs.above).toBeGreaterThan(0);
    expect(signs.below).toBeLessThan(0);
  });

  it('HiGHS goes on from a solved model when columns are added', () => {
    const session = highs.open([{ sense: 'at least', bound: 10 }]);
    session.add([{ cost: 3, upper: Number.POSITIVE_INFINITY, rows: [0], coefficients: [1] }]);
    expect(session.solve({ integer: false, seconds: 5 })).toMatchObject({ objective: 30 });
    session.add([{ cost: 3, upper: Number.POSITIVE_INFINITY, rows: [0], coefficients: [3] }]);
    expect(session.solve({ integer: false, seconds: 5 })).toMatchObject({ objective: 10 });
    expect(session.solve({ integer: true, seconds: 5 })).toMatchObject({ objective: 12 });
    session.close();
  });
});

/**
 * The cutting-stock master of thirteen roll widths with every maximal pattern
 * that starts with its first, as the small engine cannot finish it in a moment.
 */
function hardMaster(): LinearModel {
  const widths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000];
  const demands = [22, 25, 12, 14, 18, 18, 20, 10];
  const columns: LinearModel['columns'][number][] = [];
  const extend = (from: number, room: number, counts: readonly number[]): void => {
    if (room < widths[0]) {
      const rows = counts.flatMap((count, i) => (count > 0 ? [i] : []));
      columns.push({
        cost: 1,
        upper: Number.POSITIVE_INFINITY,
        rows,
        coefficients: rows.map((row) => counts[row]),
      });
      return;
    }
    widths.forEach((width, i) => {
      if (i < from || width > room) return;
      extend(
        i,
        room - width,
        counts.map((count, k) => (k === i ? count + 1 : count)),
      );
    });
  };
  extend(
    0,
    5600,
    widths.map(() => 0),
  );
  return { rows: demands.map((bound) => ({ sense: 'at least', bound })), columns };
}

describe('an answer that is wrong', () => {
  it('is really given by the small engine at its time limit: feasible, yet fractional', () => {
    const model = hardMaster();
    const answer = solveWith(javascriptEngine, model, { integer: true, seconds: 0.05 });
    expect(answer.status).toBe('optimal');
    expect(checkAnswer(model, answer, true).status).toBe('rejected');
  });

  it('is caught by the master, which then gets the right one from HiGHS', async () => {
    const model = hardMaster();
    const wrong: readonly Answer[] = [
      { status: 'optimal', values: model.columns.map(() => 0.5), objective: 1, duals: [] },
      { status: 'optimal', values: model.columns.map(() => 0), objective: 0, duals: [] },
      { status: 'optimal', values: model.columns.map(() => 1), objective: 3, duals: [] },
      { status: 'stopped' },
    ];
    for (const lie of wrong) {
      const liar: Engine = {
        name: 'liar',
        open: () => ({
          addRows: () => undefined,
          setRow: () => undefined,
          setColumn: () => undefined,
          add: () => undefined,
          solve: () => lie,
          close: () => undefined,
        }),
      };
      const engines: Engines = { small: liar, large: loadHighsEngine };
      const small = { rows: model.rows, columns: model.columns.slice(0, 40) };
      const master = new Master(small.rows, engines);
      master.add(small.columns);
      const answer = await master.solve({ integer: true, seconds: 20 });
      master.close();
      expect(master.rejected).toBe(lie.status === 'stopped' ? 0 : 1);
      expect(checkAnswer(small, answer as Answer, true).status).toBe('optimal');
    }
  });

  it('leaves no answer at all where every engine is wrong', async () => {
    const liar: Engine = {
      name: 'liar',
      open: () => ({
        addRows: () => undefined,
        setRow: () => undefined,
        setColumn: () => undefined,
        add: () => undefined,
        solve: () => ({ status: 'optimal', values: [0.5], objective: 0.5, duals: [] }),
        close: () => undefined,
      }),
    };
    const engines: Engines = { small: liar, large: () => Promise.resolve(liar) };
    const master = new Master([{ sense: 'at least', bound: 1 }], engines);
    master.add([{ cost: 1, upper: 5, rows: [0], coefficients: [2] }]);
    expect((await master.solve({ integer: true, seconds: 1 })).status).toBe('stopped');
  });
});
