import { beforeAll, describe, expect, it } from 'vitest';
import { seededRandom } from '../random.js';
import { checkAnswer } from './check-answer.js';
import { loadHighsEngine } from './highs-engine.js';
import { javascriptEngine } from './javascript-engine.js';
import type { Engine, LinearModel, Session } from './linear-model.js';
import { stoppable } from './stoppable.js';

/** A covering problem that branching does not finish within minutes. */
function endless(): LinearModel {
  const random = seededRandom(7);
  const rows = Array.from({ length: 30 }, () => ({
    sense: 'at least' as const,
    bound: 100 + Math.floor(random() * 1000),
  }));
  const columns = Array.from({ length: 100 }, () => {
    const used = rows.flatMap((_, row) => (random() < 0.4 ? [row] : []));
    return {
      cost: 50 + Math.floor(random() * 50),
      upper: Number.POSITIVE_INFINITY,
      rows: used,
      coefficients: used.map(() => 1 + Math.floor(random() * 9)),
    };
  });
  return { rows, columns };
}

function opened(engine: Engine, { rows, columns }: LinearModel): Session {
  const session = engine.open(rows);
  session.add(columns);
  return session;
}

describe('a solve that is to stop', () => {
  let highs: Engine;
  beforeAll(async () => {
    highs = await loadHighsEngine();
  });

  it('ends in HiGHS at its next checkpoint, long before its time is over', () => {
    const model = endless();
    const session = opened(highs, model);
    let asked = 0;
    const answer = session.solve({ integer: true, seconds: 110, stop: () => ++asked > 30 });
    expect(answer.status).toBe('stopped');
    // It asks hundreds of times a second: it did not go on for long after the answer.
    expect(asked).toBeGreaterThan(30);
    expect(asked).toBeLessThan(100);
    expect(checkAnswer(model, answer, true).status).toBe('stopped');
    expect(answer.status === 'stopped' && answer.values).toHaveLength(100);
    session.close();
  });

  it('leaves the model as it was, to be solved again', () => {
    const model = endless();
    const session = opened(highs, model);
    session.solve({ integer: true, seconds: 110, stop: () => true });
    const again = session.solve({ integer: false, seconds: 20 });
    const fresh = opened(highs, model).solve({ integer: false, seconds: 20 });
    if (again.status !== 'optimal' || fresh.status !== 'optimal') throw new Error('not solved');
    expect(again.objective).toBeCloseTo(fresh.objective, 6);
    session.close();
  });

  it.each(['small', 'large'] as const)('does not begin in the %s engine', async (size) => {
    let stopped = false;
    const engines = stoppable({ small: javascriptEngine, large: async () => highs }, () => stopped);
    const engine = size === 'small' ? engines.small : await engines.large();
    if (engine === undefined) throw new Error('no engine');
    const session = opened(engine, {
      rows: [{ sense: 'at least', bound: 3 }],
      columns: [{ cost: 2, upper: 9, rows: [0], coefficients: [2] }],
    });
    expect(session.solve({ integer: true, seconds: 5 })).toMatchObject({ objective: 4 });
    stopped = true;
    expect(session.solve({ integer: true, seconds: 5 })).toEqual({ status: 'stopped' });
    session.close();
  });

  it('has no large engine where there is none', async () => {
    const none = { small: javascriptEngine, large: async () => undefined };
    expect(await stoppable(none, () => false).large()).toBeUndefined();
  });
});
