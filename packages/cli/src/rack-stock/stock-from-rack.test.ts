import { describe, expect, test } from 'vitest';
import { orderToProblem } from '../order/order-to-problem.js';
import { altered, read, SMALL_ORDER } from '../order/small-order.test.support.js';
import type { RackStock } from '../rack/rack.js';
import { onRack, viewOf } from './rack-view.test.support.js';
import { withStockFromRack } from './stock-from-rack.js';

/** The small order with what a rack has for it. It keeps offcuts from 6 x 1 in. */
function withRack(view: Parameters<typeof viewOf>[0], text = altered('    on hand: 1\n', '')) {
  const sized = read(text);
  return withStockFromRack(orderToProblem(sized), sized.order.shop, viewOf(view));
}

const idsOf = ({ problem }: ReturnType<typeof withRack>) => problem.stock.map(({ id }) => id);
const THICK = altered('    on hand: 1\n', '').replace(
  '  hem: 1/4',
  '  thickness: 0.011 in\n  hem: 1/4',
);
const pile = (mark: string, length: number, width: number, told: Partial<RackStock> = {}) =>
  onRack(mark, length, width, { kind: 'sheets', name: 'Bought', count: 3, ...told });

describe('offcuts on the rack', () => {
  test('are stock of the plan by their marks, rounded down to marks of the rule', () => {
    const made = withRack({ offcuts: [onRack('CCY', 17.51, 6.02, { rolled: 'across' })] });
    expect(made.problem.stock.at(-1)).toEqual({
      kind: 'offcut',
      id: 'rack CCY',
      length: 560,
      width: 192,
      rolling: 'across',
    });
    expect(made.faults).toEqual([]);
    const { onRack: there, ...counts } = made.used;
    expect(counts).toEqual({
      id: 'rack of tests',
      revision: 4,
      fitting: 1,
      considered: 1,
      unsureThickness: 0,
    });
    expect([...there]).toEqual([['rack CCY', { mark: 'CCY', place: 'left rack' }]]);
  });

  test('are left there where no blank fits', () => {
    // The smallest blank of the order is the strip of the hexagon, 1 in wide.
    const made = withRack({ offcuts: [onRack('CCY', 17, 0.99), onRack('CDV', 0.01, 0.01)] });
    expect(idsOf(made)).toEqual(['Large', 'Small', 'A']);
    expect(made.used).toMatchObject({ fitting: 0, considered: 0 });
  });

  test('of unknown thickness go with an order that tells none, and only with that', () => {
    const offcuts = [
      onRack('CCY', 17, 6),
      onRack('CDV', 17, 6, { thickness: 0.2794 }),
      onRack('CER', 17, 6, { thickness: 0.35 }),
      onRack('CFN', 9, 0.5, { thickness: 0.2794 }),
    ];
    const untold = withRack({ offcuts });
    expect(idsOf(untold)).toEqual(['Large', 'Small', 'A', 'rack CCY']);
    // One is too narrow to be missed.
    expect(untold.used.unsureThickness).toBe(2);
    const told = withRack({ offcuts }, THICK);
    expect(idsOf(told)).toEqual(['Large', 'Small', 'A', 'rack CDV']);
    expect(told.used.unsureThickness).toBe(1);
  });

  test('of the metal of the cutters are named as these are, where stock is of several', () => {
    const mixed = THICK.replace('size: 20 x 14 in', 'size: 20 x 14 in\n    metal: copper');
    const made = withRack({ offcuts: [onRack('CDV', 17, 6, { thickness: 0.2794 })] }, mixed);
    expect(made.problem.stock.at(-1)).toMatchObject({ metal: 'tinplate', thickness: 0.2794 });
    expect(made.problem.keep).toMatchObject([{ metal: 'tinplate', thickness: 0.2794 }]);
  });

  test('never stand in the books for less than they would be kept for', () => {
    const worth = altered('    on hand: 1\n', '').replace(
      'keep offcuts from: 6 x 1 in',
      'keep offcuts from: 6 x 1 in\n  offcuts worth: 1.00',
    );
    const offcuts = [
      onRack('CCY', 12, 12, { bookValue: 20 }),
      onRack('CDV', 12, 12, { bookValue: 120 }),
      onRack('CER', 12, 12),
    ];
    const { problem } = withRack({ offcuts }, worth);
    // A square foot is 384 x 384 marks, at 678 coins a million whole ones: 99.97.
    expect(problem.stock.slice(-3).map(({ bookValue }) => bookValue)).toEqual([99, 120, undefined]);
  });

  test('may not be called as stock of the order is', () => {
    const taken = altered('    on hand: 1\n', '').replace('name: A,', 'name: rack CCY,');
    expect(withRack({ offcuts: [onRack('CCY', 17, 6)] }, taken).faults).toMatchObject([
      { path: ['offcuts', 0, 'name'] },
    ]);
  });
});

describe('whole sheets on the rack', () => {
  test('are on hand of the line of their size, less those that are promised', () => {
    const made = withRack({ sheets: [pile('CDV', 28, 20, { promised: 1, bookValue: 300 })] });
    expect(made.problem.stock[0]).toMatchObject({ id: 'Large', onHand: 2, bookValue: 300 });
    expect([...made.used.onRack]).toEqual([['Large', { mark: 'CDV', place: 'left rack' }]]);
    expect(made.used).toMatchObject({ fitting: 0, considered: 0 });
  });

  test('are so whichever side the order calls the length', () => {
    const upright = altered('    on hand: 1\n', '    rolled: across\n').replace(
      'size: 28 x 20 in',
      'size: 20 x 28 in',
    );
    const of = (rolled: 'along' | 'across') =>
      withRack({ sheets: [pile('CDV', 28, 20, { rolled })] }, upright);
    expect(of('along').problem.stock[0]).toMatchObject({ id: 'Large', onHand: 3 });
    expect(of('across').problem.stock[0]).toMatchObject({ id: 'Large', onHand: 0 });
  });

  test('of other sizes are stock that cannot be bought', () => {
    const made = withRack({ sheets: [pile('CDV', 30, 20)] });
    expect(made.problem.stock.at(-1)).toEqual({
      kind: 'sheet',
      id: 'rack CDV',
      length: 960,
      width: 640,
      price: 0,
      onHand: 3,
      canBuy: 0,
    });
    expect(made.used).toMatchObject({ fitting: 1, considered: 1 });
    expect(idsOf(withRack({ sheets: [pile('CDV', 30, 20, { promised: 3 })] }))).toEqual([
      'Large',
      'Small',
      'A',
    ]);
  });

  test('are not counted by the order too, even where all of them are promised', () => {
    for (const promised of [0, 3]) {
      const made = withRack({ sheets: [pile('CDV', 28, 20, { promised })] }, SMALL_ORDER);
      expect(made.faults).toEqual([
        {
          complaint: {
            code: 'disagrees',
            expected: 'left out: the rack counts these sheets, 3 under CDV',
          },
          path: ['sheets', 0, 'on hand'],
        },
      ]);
    }
    expect(withRack({ sheets: [pile('CDV', 20, 14)] }, SMALL_ORDER).faults).toEqual([]);
  });
});

describe('the rule for keeping offcuts', () => {
  const rule = { metal: 'tinplate', leastLength: 50, leastWidth: 100, worth: 1000, trouble: 30 };
  const silent = altered('    on hand: 1\n', '').replace('  keep offcuts from: 6 x 1 in\n', '');

  test('is that of the order, if it has one', () => {
    expect(withRack({ keepRules: [rule] }).problem.keep).toEqual([
      { leastLength: 192, leastWidth: 32, coinsPerMillion: 0 },
    ]);
  });

  test('else that of the rack for the metal and thickness, else for the metal', () => {
    // A million marks of 1/32 in are 0.63004 square metres.
    const any = [{ leastLength: 126, leastWidth: 63, coinsPerMillion: 630, trouble: 30 }];
    expect(withRack({ keepRules: [rule] }, silent).problem.keep).toEqual(any);
    const thick = silent.replace('  hem: 1/4', '  thickness: 0.011 in\n  hem: 1/4');
    expect(withRack({ keepRules: [rule] }, thick).problem.keep).toEqual(any);
    const own = { ...rule, thickness: 0.2794, worth: 0, trouble: 0 };
    const both = withRack({ keepRules: [rule, own] }, thick).problem.keep;
    expect(both).toEqual([{ leastLength: 126, leastWidth: 63, coinsPerMillion: 0 }]);
    const other = { ...rule, metal: 'copper' };
    expect(withRack({ keepRules: [other] }, silent).problem.keep).toBeUndefined();
  });

  test('may not make a sheet worth more than it costs', () => {
    const dear = { ...rule, worth: 3000, trouble: 0 };
    expect(withRack({ keepRules: [dear] }, silent).faults).toEqual([
      {
        complaint: {
          code: 'disagrees',
          expected: expect.stringMatching(/^at least \$10\.83, what the rack's rule/),
        },
        path: ['sheets', 0, 'price'],
      },
      {
        complaint: { code: 'disagrees', expected: expect.stringMatching(/^at least \$5\.41, /) },
        path: ['sheets', 1, 'price'],
      },
    ]);
  });
});
