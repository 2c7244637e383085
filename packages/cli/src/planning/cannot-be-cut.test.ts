import type { CuttingProblem } from '@stripwright/nesting';
import { describe, expect, test } from 'vitest';
import type { Rule } from '../length/print-length.js';
import { cannotBeCut } from './cannot-be-cut.js';

const rule: Rule = { units: 'mm', mark: 0.5 };
const problem: CuttingProblem = {
  pieces: [
    {
      id: 'Heart',
      length: 600,
      width: 9,
      quantity: 1,
      mayTurn: true,
      metal: 'tin',
      thickness: 0.3,
    },
    { id: 'Lid', length: 8, width: 90, quantity: 1, mayTurn: true },
  ],
  stock: [{ kind: 'offcut', id: 'A', length: 100, width: 100 }],
  shear: { firstCut: 'either', narrowestStrip: 10 },
};

describe('why an order cannot be cut', () => {
  test('names the metal that there is no stock of, a line for each piece', () => {
    const outcome = { status: 'no stock of the metal', pieces: ['Heart', 'Lid'] } as const;
    expect(cannotBeCut(outcome, problem, rule, undefined).split('\n')).toEqual([
      'items: "Heart" takes tin of 0.3 mm, and no sheet or offcut is of it; add one that is',
      'items: "Lid" takes a metal without a name, and no sheet or offcut is of it; add one that is',
    ]);
  });

  test('says how narrow a blank is, and how narrow a strip the shear holds', () => {
    const outcome = { status: 'piece too narrow', pieces: ['Heart'] } as const;
    expect(cannotBeCut(outcome, problem, rule, undefined)).toBe(
      'items: "Heart" takes a blank of 300 x 4.5 mm, too narrow for the shear; ' +
        'the narrowest strip that it holds is 5 mm',
    );
  });
});
