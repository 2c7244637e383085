import { describe, expect, it } from 'vitest';
import { checkProblem } from '../check-problem.js';
import type { CuttingProblem } from '../problem.js';
import { ProblemError } from '../problem-error.js';

function refusal(problem: CuttingProblem): unknown {
  try {
    checkProblem(problem);
  } catch (error) {
    expect(error).toBeInstanceOf(ProblemError);
    return error;
  }
  throw new Error('it was not refused');
}

describe('checkCrowding', () => {
  it('refuses stock that might hold more pieces than a layout can list', () => {
    const dots = (quantity: number, spares = 0, kerf = 0, metal: object = {}): CuttingProblem => ({
      pieces: [
        { id: 'dot', length: 2, width: 1, quantity, spares, mayTurn: true },
        { id: 'large', length: 1000, width: 400, quantity: 5, mayTurn: true },
      ],
      stock: [{ kind: 'offcut', id: 'A', length: 1000, width: 500, ...metal }],
      shear: { firstCut: 'either', kerf },
    });
    const path = 'stock[0]';
    const code = 'too many to compute';
    expect(() => checkProblem(dots(100_000))).not.toThrow();
    expect(refusal(dots(100_001))).toMatchObject({ code, path, received: 100_001 });
    expect(refusal(dots(90_000, 20_000))).toMatchObject({ code, path, received: 110_000 });
    // It holds 250,000 dots, and 83,583 where each cut takes a tick.
    expect(refusal(dots(1_000_000))).toMatchObject({ code, path, received: 250_000 });
    expect(() => checkProblem(dots(1_000_000, 0, 1))).not.toThrow();
    // Of another metal it holds none.
    expect(() => checkProblem(dots(1_000_000, 0, 0, { metal: 'zinc' }))).not.toThrow();
  });
});
