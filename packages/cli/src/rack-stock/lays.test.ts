import type { Offcut, Piece, Shear, Sheet } from '@stripwright/nesting';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { realPlanner } from '../environment.test.support.js';
import { canHold, laysOf, usableBox } from './lays.js';

const side = fc.integer({ min: 1, max: 20 });
const rolling = fc.constantFrom('along' as const, 'across' as const, undefined);
const ifAny = <T>(name: string, value: T | undefined) =>
  value === undefined ? {} : { [name]: value };

const pieces = fc.record({ length: side, width: side, mayTurn: fc.boolean(), rolling }).map(
  ({ rolling: rolled, ...size }): Piece => ({
    id: 'P',
    quantity: 1,
    ...size,
    ...ifAny('rolling', rolled),
  }),
);
const stocks = fc
  .record({ length: side, width: side, isSheet: fc.boolean(), rolling })
  .map(({ isSheet, rolling: rolled, ...size }): Offcut | Sheet => {
    const common = { id: 'S', ...size, ...ifAny('rolling', rolled) };
    return isSheet
      ? { kind: 'sheet', ...common, price: 0, onHand: 1, canBuy: 0 }
      : { kind: 'offcut', ...common };
  });
const shears = fc
  .record({
    firstCut: fc.constantFrom('along' as const, 'across' as const, 'either' as const),
    longestCut: fc.option(side, { nil: undefined }),
    narrowestStrip: fc.option(fc.integer({ min: 0, max: 5 }), { nil: undefined }),
    trim: fc.integer({ min: 0, max: 2 }),
    kerf: fc.integer({ min: 0, max: 2 }),
  })
  .map(
    ({ firstCut, longestCut, narrowestStrip, trim, kerf }): Shear => ({
      firstCut,
      ...ifAny('longestCut', longestCut),
      ...ifAny('narrowestStrip', narrowestStrip),
      // A trim below the kerf is refused.
      ...(trim >= kerf ? { trim } : {}),
      kerf,
    }),
  );

test('a stock can hold a blank just where the planner can cut it from there', async () => {
  let held = 0;
  let refused = 0;
  await fc.assert(
    fc.asyncProperty(pieces, stocks, shears, async (piece, stock, shear) => {
      const box = usableBox(stock, shear);
      // The planner refuses a trim that leaves nothing as a fault of the problem.
      if (stock.kind === 'sheet' && Math.min(stock.length, stock.width) <= 2 * (shear.trim ?? 0)) {
        expect(box).toBeUndefined();
        return;
      }
      const fits =
        box !== undefined && laysOf(piece, stock.rolling).some((lay) => canHold(box, lay, shear));
      const outcome = await realPlanner.planCutting({ pieces: [piece], stock: [stock], shear });
      expect(fits).toBe(outcome.status === 'planned');
      if (fits) held += 1;
      else refused += 1;
    }),
    { numRuns: 400 },
  );
  expect(held).toBeGreaterThan(20);
  expect(refused).toBeGreaterThan(20);
});
