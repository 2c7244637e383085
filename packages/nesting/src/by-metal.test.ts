import { describe, expect, it } from 'vitest';
import { byMetal } from './by-metal.js';
import { either, offcut, piece, sheet } from './plan-cutting.test.support.js';
import type { CuttingProblem } from './problem.js';

const thin = { metal: 'tinplate', thickness: 0.3 };
const thick = { metal: 'tinplate', thickness: 0.4 };

describe('byMetal', () => {
  it('parts pieces and stock by metal and thickness, in the order of the pieces', () => {
    const problem: CuttingProblem = {
      pieces: [
        piece('a', 5, 5, 1, thick),
        piece('b', 5, 5, 1),
        piece('c', 5, 5, 1, thin),
        piece('d', 5, 5, 1, thick),
        piece('e', 5, 5, 1, { thickness: 0.3 }),
      ],
      stock: [
        sheet('plain', 9, 9),
        sheet('thin', 9, 9, thin),
        offcut('thick', 9, 9, thick),
        sheet('thick too', 9, 9, thick),
        sheet('other', 9, 9, { metal: 'brass' }),
      ],
      shear: either,
      keep: [{ ...thin, leastLength: 1, leastWidth: 1, coinsPerMillion: 1 }],
    };
    const parts = byMetal(problem);
    expect(parts.map(({ metal }) => metal)).toEqual([thick, {}, thin, { thickness: 0.3 }]);
    const ids = (of: readonly { readonly id: string }[]) => of.map(({ id }) => id);
    expect(parts.map((part) => [ids(part.problem.pieces), ids(part.problem.stock)])).toEqual([
      [
        ['a', 'd'],
        ['thick', 'thick too'],
      ],
      [['b'], ['plain']],
      [['c'], ['thin']],
      [['e'], []],
    ]);
    for (const part of parts) {
      expect(part.problem.shear).toBe(problem.shear);
      expect(part.problem.keep).toBe(problem.keep);
    }
  });

  it('leaves out metals of which nothing but spares is welcome', () => {
    const spare = piece('spare', 5, 5, 0, { ...thin, spares: 4 });
    const other = piece('other spare', 5, 5, 0, { ...thick, spares: 4 });
    const problem: CuttingProblem = {
      pieces: [spare, piece('a', 5, 5, 1, thick), other],
      stock: [sheet('thin', 9, 9, thin), sheet('thick', 9, 9, thick)],
      shear: either,
    };
    const parts = byMetal(problem);
    expect(parts.map(({ metal }) => metal)).toEqual([thick]);
    expect(parts[0].problem.pieces.map(({ id }) => id)).toEqual(['a', 'other spare']);
  });
});
