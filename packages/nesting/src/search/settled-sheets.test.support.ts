import fc from 'fast-check';
import { groundOfOneSlot } from './one-slot.test.support.js';
import { SettledMaster } from './settled-master.js';

const LENGTH = 100;
const WIDTH = 10;
/** Slots of a sheet. */
export const SLOTS = 3;
const KINDS = 5;

/** Orders of many pieces of one width. */
export const orders = fc.record({
  lengths: fc.uniqueArray(fc.integer({ min: 13, max: 49 }), { minLength: KINDS, maxLength: KINDS }),
  quantities: fc.array(fc.integer({ min: 8, max: 30 }), { minLength: KINDS, maxLength: KINDS }),
  seed: fc.nat(1000),
});
type Order = typeof orders extends fc.Arbitrary<infer T> ? T : never;

/** The bands of so many settled sheets, none of them settled, and their linear plan. */
export async function opened({ lengths, quantities }: Order, sheets: number) {
  const ground = groundOfOneSlot([LENGTH, WIDTH], lengths, quantities);
  const { demand } = ground;
  const book = ground.newBook();
  const slot = book.slot(0, 'along', WIDTH);
  book.addSheet({ box: 0, cuts: 'along', slots: [[slot, SLOTS]], kept: 0 });
  const classes = ground.classes.map((entry) => ({
    ...entry,
    supplies: entry.supplies.map((supply) => ({ ...supply, count: sheets, least: sheets })),
  }));
  const ones = demand.map(() => 1);
  const objective = { cost: undefined, caps: [] };
  const request = { demand, classes, objective, losses: ones, spare: ones, book, closed: true };
  const master = new SettledMaster(ground, request);
  master.settleSheet(0, sheets);
  const start = await master.solve(50);
  if (start?.duals === undefined) throw new Error('there is always a linear plan');
  return { ground, book, classes, master, start, duals: start.duals };
}

/** The fewest sheets whose broken bands give all pieces. */
export async function fewestSheets(order: Order): Promise<number> {
  for (let sheets = 1; ; sheets++) {
    const { master, start } = await opened(order, sheets);
    master.close();
    if (start.cost <= 0) return sheets;
  }
}

/** How many in all. */
export const total = (counts: readonly number[]) =>
  [...counts].reduce((sum, n) => sum + (n ?? 0), 0);
