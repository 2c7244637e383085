import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CuttingPlan,
  type CuttingProblem,
  type PlanOutcome,
  type PlanProgress,
  planCutting,
  verifyPlan,
} from '../index.js';
import { EVERY_KIND } from '../kinds.test.support.js';
import { seededRandom } from '../random.js';
import { SMALL } from '../random-kinds.test.support.js';

// A thread cannot run the sources: this is what `tsc -b` made of them.
const built = new URL('../../dist/worker/index.js', import.meta.url);
const { planInWorker } = (await import(built.href)) as typeof import('./index.js');

/** More than the search can finish in the time it has here. */
const large = ((): CuttingProblem => {
  const random = seededRandom(3);
  const upTo = (most: number) => 1 + Math.floor(random() * most);
  return {
    pieces: Array.from({ length: 60 }, (_, i) => ({
      id: `piece ${i}`,
      length: 200 + upTo(500),
      width: 80 + upTo(300),
      quantity: 10 + upTo(40),
      mayTurn: true,
    })),
    stock: [
      { kind: 'sheet', id: 'A', length: 2000, width: 1000, price: 211, onHand: 0, canBuy: 'any' },
      { kind: 'sheet', id: 'B', length: 1500, width: 1100, price: 176, onHand: 0, canBuy: 'any' },
    ],
    shear: { firstCut: 'either' },
  };
})();

const small: CuttingProblem = {
  pieces: [{ id: 'lid', length: 60, width: 40, quantity: 7, mayTurn: true }],
  stock: [{ kind: 'sheet', id: 'A', length: 130, width: 100, price: 9, onHand: 0, canBuy: 'any' }],
  shear: { firstCut: 'either' },
};

function planOf(outcome: PlanOutcome): CuttingPlan {
  if (outcome.status !== 'planned') throw new Error(outcome.status);
  return outcome.plan;
}

describe('planning in a thread', () => {
  it('refuses a time limit that is no number before the thread is begun', async () => {
    const options = { timeLimitSeconds: Number.NaN };
    const fault = { code: 'not a finite number', path: 'options.timeLimitSeconds' };
    await expect(planInWorker(small, options)).rejects.toMatchObject(fault);
  });

  it('gives what planning in this one gives', async () => {
    const problems = fc.oneof(...EVERY_KIND.map((kind) => kind.problems(SMALL)));
    await fc.assert(
      fc.asyncProperty(problems, fc.integer({ min: 1, max: 9 }), async (problem, seed) => {
        expect(await planInWorker(problem, { seed })).toEqual(await planCutting(problem, { seed }));
      }),
      { numRuns: 12 },
    );
  });

  it('leaves the event loop free, and tells of progress meanwhile', async () => {
    let turns = 0;
    const turn = setInterval(() => turns++, 1);
    const told: PlanProgress[] = [];
    const plans: CuttingPlan[] = [];
    const turnsAt: number[] = [];
    const outcome = await planInWorker(large, {
      timeLimitSeconds: 2,
      onProgress: (step) => {
        told.push(step);
        turnsAt.push(turns);
      },
      onPlan: (plan) => plans.push(plan),
    }).finally(() => clearInterval(turn));
    expect(turns).toBeGreaterThan(50);
    // Word comes as it goes, not all at the end.
    expect(turnsAt[0]).toBeLessThan(turns);
    expect(told.map(({ phase }) => phase)).toContain('better plan');
    const plan = planOf(outcome);
    expect(verifyPlan(large, plan)).toEqual([]);
    expect(plan.cost).toBeLessThanOrEqual(Math.min(...plans.map(({ cost }) => cost)));
  });
});

describe('planning in a thread that is called off', () => {
  it('gives the best plan so far with its gap', async () => {
    const control = new AbortController();
    const told: CuttingPlan[] = [];
    const outcome = await planInWorker(large, {
      signal: control.signal,
      graceSeconds: 60,
      onPlan: (plan) => {
        told.push(plan);
        control.abort();
      },
    });
    const plan = planOf(outcome);
    expect(verifyPlan(large, plan)).toEqual([]);
    expect(plan.effort.ending).toBe('called off');
    expect(plan.cost).toBeLessThanOrEqual(told[0]?.cost ?? 0);
    expect(plan.bound.cost).toBeLessThanOrEqual(plan.cost);
  });

  it('before it begins gives the first plan', async () => {
    const outcome = await planInWorker(large, { signal: AbortSignal.abort(), graceSeconds: 60 });
    const first = await planCutting(large, { signal: { aborted: true } });
    expect(outcome).toEqual(first);
    expect(planOf(outcome).effort.ending).toBe('called off');
  });

  it('gives the last plan it told of where it does not answer', async () => {
    const control = new AbortController();
    const told: CuttingPlan[] = [];
    const bounds: number[] = [];
    const outcome = await planInWorker(large, {
      signal: control.signal,
      graceSeconds: 0,
      onPlan: (plan) => told.push(plan),
      onProgress: ({ bound, phase }) => {
        bounds.push(bound);
        if (phase === 'linear plan') control.abort();
      },
    });
    const plan = planOf(outcome);
    expect(verifyPlan(large, plan)).toEqual([]);
    expect(plan.effort.ending).toBe('called off');
    expect(plan.layouts).toEqual(told[told.length - 1]?.layouts);
    expect(plan.bound).toEqual({ cost: Math.max(...bounds), proven: false });
    expect(plan.bound.cost).toBeGreaterThan(0);
  });

  it('has found none where it does not answer and told of none', async () => {
    const control = new AbortController();
    const outcome = planInWorker(large, { signal: control.signal, graceSeconds: 0 });
    control.abort();
    expect(await outcome).toEqual({ status: 'none found' });
  });

  it('waits past its time for the first plan, and for no other', async () => {
    const told: CuttingPlan[] = [];
    const outcome = await planInWorker(large, {
      timeLimitSeconds: 0,
      graceSeconds: 0,
      onPlan: (plan) => told.push(plan),
    });
    expect(planOf(outcome).effort.ending).toBe('time limit');
    expect(planOf(outcome).cost).toBe(told[0]?.cost);
  });
});

describe('faults of planning in a thread', () => {
  it.each<[what: string, problem: unknown, refusal: object]>([
    ['here', { ...small, pieces: [] }, { code: 'no pieces', path: 'pieces', received: [] }],
    [
      'here, though it could not be handed over',
      { ...small, pieces: [{ ...small.pieces[0], width: Symbol('wide') }] },
      { code: 'not a whole number', path: 'pieces[0].width' },
    ],
    [
      'there, since the getter of a class stays behind',
      {
        ...small,
        pieces: [
          Object.assign(
            new (class {
              get width() {
                return 40;
              }
            })(),
            { id: 'lid', length: 60, quantity: 7, mayTurn: true },
          ),
        ],
      },
      {
        code: 'not a whole number',
        path: 'pieces[0].width',
        message: 'pieces[0].width: must be a whole number of at least 1; got undefined',
      },
    ],
  ])('a problem that makes no sense is refused %s', async (_, problem, refusal) => {
    const planning = planInWorker(problem as CuttingProblem);
    await expect(planning).rejects.toMatchObject({ name: 'ProblemError', ...refusal });
  });

  it('what cannot be handed over is told', async () => {
    const problem = { ...small, note: () => 'a function' };
    await expect(planInWorker(problem)).rejects.toMatchObject({ name: 'DataCloneError' });
  });

  it('an error of the planner arrives', async () => {
    const seed = 5n as unknown as number;
    await expect(planInWorker(large, { seed })).rejects.toThrow(/BigInt/);
  });

  it.each(['onProgress', 'onPlan'])('an error of %s arrives', async (callback) => {
    const planning = planInWorker(large, {
      [callback]: () => {
        throw new RangeError('of the caller');
      },
    });
    await expect(planning).rejects.toThrow(new RangeError('of the caller'));
  });
});

it('nothing keeps a process alive when planning is done, or called off', async () => {
  const script = `
    import { planInWorker } from ${JSON.stringify(built.href)};
    const done = await planInWorker(${JSON.stringify(small)});
    const control = new AbortController();
    const off = await planInWorker(${JSON.stringify(large)}, {
      signal: control.signal, graceSeconds: 600, timeLimitSeconds: 600,
      onPlan: () => control.abort(),
    });
    console.log(done.status, off.status, off.plan.effort.ending);
  `;
  // Flags of the command line that suit no file are no hindrance.
  const words = ['--input-type=module', '--eval', script];
  const { stdout } = await promisify(execFile)(process.execPath, words, { timeout: 110_000 });
  expect(stdout).toBe('planned planned called off\n');
});
