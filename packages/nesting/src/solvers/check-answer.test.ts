import { describe, expect, it } from 'vitest';
import { checkAnswer } from './check-answer.js';
import type { Answer, LinearModel } from './linear-model.js';

/** Two products of one sheet each: at least 3 of the first, 2 of the second, at most 4 sheets. */
const model: LinearModel = {
  rows: [
    { sense: 'at least', bound: 3 },
    { sense: 'at least', bound: 2 },
    { sense: 'at most', bound: 4 },
  ],
  columns: [
    { cost: 5, upper: 10, rows: [0, 2], coefficients: [2, 1] },
    { cost: 4, upper: 10, rows: [1, 2], coefficients: [1, 1] },
  ],
};

function optimal(values: number[], objective: number, duals: number[] = []): Answer {
  return { status: 'optimal', values, objective, duals };
}

describe('checkAnswer', () => {
  it('accepts a right integral answer and makes it exactly whole', () => {
    expect(checkAnswer(model, optimal([2 + 1e-9, 2], 18), true)).toEqual(optimal([2, 2], 18));
  });

  it('accepts a right linear answer with its duals', () => {
    const answer = optimal([1.5, 2], 15.5, [2.5, 4, 0]);
    expect(checkAnswer(model, answer, false)).toEqual(answer);
  });

  it.each([
    ['a fraction where whole numbers are asked', optimal([1.5, 2], 15.5), 'not a whole number'],
    ['a row that is missed', optimal([1, 2], 13), 'row 0 must be at least 3'],
    ['a row that is overstepped', optimal([3, 2], 23), 'row 2 must be at most 4'],
    ['a value below 0', optimal([2, -1], 6), 'outside its bounds'],
    ['a value above its bound', optimal([11, 2], 63), 'outside its bounds'],
    ['an objective that does not add up', optimal([2, 2], 17), 'claimed 17, recomputed 18'],
    ['no number', optimal([Number.NaN, 2], 18), 'is no number'],
    ['too few values', optimal([2], 10), '1 values for 2 columns'],
  ])('rejects %s', (_, answer, why) => {
    const checked = checkAnswer(model, answer, true);
    expect(checked.status).toBe('rejected');
    expect(checked).toHaveProperty('why', expect.stringContaining(why));
  });

  it.each([1, 3])('rejects an answer that is off a row to be met exactly (%i)', (value) => {
    const exact: LinearModel = {
      rows: [{ sense: 'exactly', bound: 2 }],
      columns: [{ cost: 1, upper: 9, rows: [0], coefficients: [1] }],
    };
    expect(checkAnswer(exact, optimal([2], 2), true).status).toBe('optimal');
    const checked = checkAnswer(exact, optimal([value], value), true);
    expect(checked).toHaveProperty('why', expect.stringContaining('must be exactly 2'));
    expect(checkAnswer(exact, optimal([value], value, [1]), false).status).toBe('rejected');
  });

  it('rejects a linear answer that misses a row, and one without duals', () => {
    expect(checkAnswer(model, optimal([1.4, 2], 15, [2.5, 4, 0]), false).status).toBe('rejected');
    expect(checkAnswer(model, optimal([1.5, 2], 15.5, []), false).status).toBe('rejected');
  });

  it('checks the values of a stopped answer as well', () => {
    const stopped: Answer = { status: 'stopped', values: [1.5, 2], objective: 15.5 };
    expect(checkAnswer(model, stopped, true).status).toBe('rejected');
    expect(checkAnswer(model, { status: 'stopped' }, true).status).toBe('stopped');
  });
});
