import type { CuttingProblem, Stock } from '@stripwright/nesting';
import { ticksDown } from '../length/ticks.js';
import type { SizedOrder } from './strips.js';

/**
 * The order as the planner takes it: ticks and coins, ids that are the order's
 * names. Blanks are already rounded up; stock and the shear's reach round down.
 */
export function orderToProblem({ order, blanks }: SizedOrder): CuttingProblem {
  const { rule, shear } = order.shop;
  const down = (millimetres: number) => ticksDown(millimetres, rule.mark);
  const sheets = order.sheets.map(
    ({ name, size, price, onHand, canBuy }): Stock => ({
      kind: 'sheet',
      id: name,
      length: down(size.length),
      width: down(size.width),
      price,
      onHand,
      canBuy,
    }),
  );
  const offcuts = order.offcuts.map(
    ({ name, size }): Stock => ({
      kind: 'offcut',
      id: name,
      length: down(size.length),
      width: down(size.width),
    }),
  );
  return {
    pieces: blanks.map(({ name, length, width, quantity, mayTurn }) => ({
      id: name,
      length,
      width,
      quantity,
      mayTurn,
    })),
    stock: [...sheets, ...offcuts],
    shear: {
      firstCut: shear.firstCut,
      ...(shear.longestCut === undefined ? {} : { longestCut: down(shear.longestCut) }),
    },
  };
}
