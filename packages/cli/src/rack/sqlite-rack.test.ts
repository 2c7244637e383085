import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../environment.test.support.js';
import { cuttingOf, offcutOf, plannedOf, sheetsOf } from './planned-cutting.test.support.js';
import type { Rack } from './rack.js';
import { RackError } from './rack-error.js';
import { sqliteRacks } from './sqlite-racks.js';

const folder = temporaryFolder();
let racks = 0;
let rack: Rack;
beforeEach(() => {
  racks++;
  rack = sqliteRacks({
    now: () => `2026-03-02T09:00:00.${racks}Z`,
    newId: () => `rack ${racks}`,
  }).open(join(folder, `new folder/${racks}.sqlite`));
  return () => rack.close();
});

const refusal = (deed: () => unknown): RackError => {
  try {
    deed();
  } catch (error) {
    if (error instanceof RackError) return error;
    throw error;
  }
  throw new Error('It was not refused.');
};
const counts = () => rack.list({ gone: true }).map(({ count, promised }) => [count, promised]);

describe('what lies on a rack', () => {
  it('is listed as it was told, the longer side first', () => {
    const [mark = ''] = rack.add([
      offcutOf({ length: 150, width: 444.5, rolled: 'along', bookValue: 120 }),
    ]);
    expect(rack.list()).toEqual([
      {
        ...offcutOf({ length: 444.5, width: 150, rolled: 'across', bookValue: 120 }),
        mark,
        addedAt: '2026-03-02T09:00:00.1Z',
        promised: 0,
      },
    ]);
    expect(rack.find(mark)).toEqual(rack.list()[0]);
    expect(rack.history(mark)).toMatchObject([{ deed: 'added', change: 1, promisedChange: 0 }]);
  });

  it('keeps sheets of one size under one mark', () => {
    const marks = rack.add([sheetsOf(3), sheetsOf(4), sheetsOf(5, { rolled: 'along' })]);
    expect(marks[0]).toBe(marks[1]);
    expect(rack.list().map(({ count }) => count)).toEqual([7, 5]);
  });

  it('is found by kind, metal and least size, lying either way', () => {
    rack.add([offcutOf(), sheetsOf(1), offcutOf({ metal: 'copper' }), offcutOf({ width: 20 })]);
    expect(rack.list({ kind: 'offcut', metal: 'tinplate' })).toHaveLength(2);
    expect(rack.list({ leastLength: 150, leastWidth: 400 })).toHaveLength(3);
    expect(rack.list({ leastLength: 150.000001, leastWidth: 400 })).toHaveLength(1);
    expect(rack.list({ thickness: 0.28 })).toHaveLength(4);
    expect(rack.list({ thickness: 0.3 })).toHaveLength(0);
  });

  it('never gives a mark twice', () => {
    const [mark = ''] = rack.add([offcutOf()]);
    rack.remove(mark, 1, 'bent');
    expect(rack.list()).toEqual([]);
    expect(rack.add([offcutOf()])).not.toContain(mark);
    expect(rack.history(mark).map(({ deed, note }) => [deed, note])).toEqual([
      ['added', ''],
      ['removed', 'bent'],
    ]);
  });

  it('is corrected field by field, and the history says how', () => {
    const [mark = ''] = rack.add([offcutOf({ bookValue: 5 })]);
    rack.correct(mark, { length: 120, place: '', bookValue: null });
    expect(rack.find(mark)).toMatchObject({ length: 150, width: 120, place: '' });
    expect(rack.find(mark)).not.toHaveProperty('bookValue');
    expect(rack.history(mark).at(-1)?.note).toBe(
      'length 400 mm to 120 mm; place left rack to none; worth 0.05 to unknown',
    );
  });

  it('takes all of an edited list or nothing, and tells every fault', () => {
    const [mark = ''] = rack.add([offcutOf()]);
    const lines = [
      { ...offcutOf({ place: 'floor' }), mark, line: 2 },
      { ...offcutOf(), mark: 'XXX', line: 3 },
      { ...offcutOf({ length: -1 }), line: 4 },
    ];
    expect(refusal(() => rack.merge(lines)).message).toMatch(/^line 3: XXX: .*\nline 4: length/);
    expect(rack.list().map(({ place }) => place)).toEqual(['left rack']);
    const again = { ...offcutOf(), mark, line: 5 };
    expect(rack.merge([again, { ...offcutOf(), line: 6 }])).toMatchObject({
      corrected: [],
      unchanged: 1,
    });
    expect(rack.list()).toHaveLength(2);
  });

  it('is worth the sum of its book values', () => {
    rack.add([offcutOf({ bookValue: 50 }), sheetsOf(3, { bookValue: 200 }), offcutOf()]);
    expect(rack.worth()).toMatchObject({ offcuts: 2, sheets: 3, value: 650, unvalued: 1 });
    expect(rack.worth().sheetArea).toBeCloseTo(3 * 700 * 500, 6);
  });
});

describe('booking', () => {
  it('takes off what a plan used and puts on what it kept', () => {
    const [one = '', sheet = ''] = rack.add([offcutOf(), sheetsOf(3)]);
    const cutting = cuttingOf('p', [
      { stock: plannedOf(one, offcutOf()) },
      { stock: plannedOf(sheet, sheetsOf(3), { fromRack: 2 }), times: 2 },
    ]);
    const booked = rack.book(cutting);
    expect(booked.taken).toEqual([
      { mark: one, count: 1 },
      { mark: sheet, count: 2 },
    ]);
    expect(booked.kept).toHaveLength(3);
    // 3000 square mm of tinplate 0.28 mm thick, at 7.85 g a cubic cm.
    expect(booked.scrapGrams).toBeCloseTo(3 * 0.28 * 7.85, 9);
    expect(booked.job.state).toBe('booked');
    expect(rack.list().map(({ kind, count }) => [kind, count])).toEqual([
      ['sheets', 1],
      ...booked.kept.map(() => ['offcut', 1]),
    ]);
    expect(rack.find(booked.kept[0]?.mark ?? '')).toMatchObject({
      origin: 'job 1: order p, layout 1',
      bookValue: 30,
    });
    expect(refusal(() => rack.book(cutting)).code).toBe('booked already');
  });

  it('brings the sheets that the plan buys, and leaves the rest of a pack there', () => {
    const stock = plannedOf(undefined, sheetsOf(1), { bought: 10 });
    const booked = rack.book(cuttingOf('p', [{ stock, times: 7 }]));
    expect(booked.bought.map(({ count }) => count)).toEqual([10]);
    expect(rack.list({ kind: 'sheets' })).toMatchObject([{ count: 3, promised: 0 }]);
  });

  it('puts bought sheets with those of that size, though the plan knows it less exactly', () => {
    const [mark = ''] = rack.add([sheetsOf(1, { length: 700.4 })]);
    const stock = plannedOf(mark, sheetsOf(1), { fromRack: 1, bought: 2, price: 650 });
    expect(rack.book(cuttingOf('p', [{ stock, times: 3 }])).taken).toEqual([{ mark, count: 3 }]);
    expect(rack.list({ kind: 'sheets', gone: true })).toMatchObject([{ mark, count: 0 }]);
  });

  it('lets bought sheets stand in the books for their price', () => {
    const stock = plannedOf(undefined, sheetsOf(1), { bought: 10, price: 650 });
    rack.book(cuttingOf('p', [{ stock, times: 7 }]));
    expect(rack.list({ kind: 'sheets' })).toMatchObject([{ count: 3, bookValue: 650 }]);
  });

  it('cuts first what the shop has beside the rack', () => {
    const stock = plannedOf(undefined, sheetsOf(1), { bought: 10, beside: 2 });
    const cutting = cuttingOf('p', [{ stock, times: 5 }]);
    expect(rack.book(cutting, [{ layout: 0, times: 3 }]).taken).toMatchObject([{ count: 1 }]);
    expect(rack.list({ kind: 'sheets' })).toMatchObject([{ count: 9, promised: 2 }]);
    rack.book(cutting);
    expect(rack.list({ kind: 'sheets' })).toMatchObject([{ count: 7, promised: 0 }]);
  });

  it('of one layout promises the rest of the plan', () => {
    const [one = '', two = ''] = rack.add([offcutOf(), offcutOf()]);
    const cutting = cuttingOf('p', [
      { stock: plannedOf(one, offcutOf()) },
      { stock: plannedOf(two, offcutOf()) },
    ]);
    const first = rack.book(cutting, [{ layout: 1, times: 1 }]);
    expect(first.job).toMatchObject({
      state: 'partly booked',
      layouts: [{ booked: 0 }, { booked: 1 }],
    });
    expect(rack.find(one)).toMatchObject({ count: 1, promised: 1 });
    const other = cuttingOf('q', [{ stock: plannedOf(one, offcutOf()) }]);
    expect(refusal(() => rack.book(other)).message).toContain('job 1 (order p)');
    expect(refusal(() => rack.remove(one, 1, 'lost')).code).toBe('promised');
    expect(refusal(() => rack.book(cutting, [{ layout: 1, times: 1 }])).code).toBe(
      'booked already',
    );
    expect(refusal(() => rack.book(cutting, [{ layout: 2, times: 1 }])).code).toBe(
      'no such layout',
    );
    expect(rack.book(cutting).job.state).toBe('booked');
  });

  it('of one layout is taken though the rest of the plan lacks its metal', () => {
    const [one = '', two = ''] = rack.add([offcutOf(), offcutOf()]);
    const cutting = cuttingOf('p', [
      { stock: plannedOf(one, offcutOf()) },
      { stock: plannedOf(two, offcutOf()) },
    ]);
    rack.remove(two, 1, 'lost');
    expect(rack.book(cutting, [{ layout: 0, times: 1 }]).lacking).toEqual([two]);
    expect(refusal(() => rack.book(cutting)).code).toBe('not enough');
  });

  it.each([
    ['gone', 'not enough', (mark: string) => rack.remove(mark, 1, 'lost')],
    ['cut down', 'changed', (mark: string) => rack.correct(mark, { length: 399 })],
    ['of another metal', 'changed', (mark: string) => rack.correct(mark, { metal: 'brass' })],
  ] as const)('is refused where an offcut is %s, and changes nothing', (_, code, spoil) => {
    const [one = '', two = ''] = rack.add([offcutOf(), offcutOf()]);
    const cutting = cuttingOf('p', [
      { stock: plannedOf(two, offcutOf()) },
      { stock: plannedOf(one, offcutOf()) },
    ]);
    spoil(one);
    const before = [counts(), rack.revision, rack.jobs()];
    const error = refusal(() => rack.book(cutting));
    expect([error.code, error.message]).toEqual([code, expect.stringContaining('plan again')]);
    expect([counts(), rack.revision, rack.jobs()]).toEqual(before);
  });

  it('is taken of an offcut that moved, or that a plan rounded down to its marks', () => {
    const [mark = ''] = rack.add([offcutOf({ length: 400.4 })]);
    rack.correct(mark, { place: 'floor', bookValue: 3 });
    const cutting = cuttingOf('p', [{ stock: plannedOf(mark, offcutOf()) }]);
    expect(rack.book(cutting).taken).toEqual([{ mark, count: 1 }]);
  });

  it('is refused for a plan of another rack', () => {
    const cutting = cuttingOf('p', [{ stock: plannedOf(undefined, sheetsOf(1), { bought: 1 }) }]);
    const error = refusal(() => rack.book({ ...cutting, rackId: 'another' }));
    expect(error.code).toBe('another rack');
    expect(rack.book({ ...cutting, rackId: rack.id }).booking).toBe(1);
  });
});

describe('holding', () => {
  it('promises a plan its stock until it is let go', () => {
    const [one = ''] = rack.add([offcutOf()]);
    const cutting = cuttingOf('p', [{ stock: plannedOf(one, offcutOf()) }]);
    expect(rack.hold(cutting).state).toBe('held');
    expect(rack.list({ free: true })).toEqual([]);
    const other = cuttingOf('q', [{ stock: plannedOf(one, offcutOf()) }]);
    expect(refusal(() => rack.hold(other)).code).toBe('promised');
    expect(rack.jobs()).toHaveLength(1);
    expect(rack.letGo('p').state).toBe('let go');
    expect(refusal(() => rack.letGo('p')).code).toBe('let go already');
    expect(refusal(() => rack.letGo('q')).code).toBe('not held');
    expect(rack.hold(other).state).toBe('held');
    expect(refusal(() => rack.book(cutting)).code).toBe('promised');
    expect(rack.book(other).job.state).toBe('booked');
  });

  it('keeps sheets that were bought for a plan from all others', () => {
    const stock = plannedOf(undefined, sheetsOf(1), { bought: 4 });
    const cutting = cuttingOf('p', [{ stock, times: 3 }]);
    rack.receive(cutting);
    expect(rack.list()).toMatchObject([{ count: 4, promised: 3 }]);
    expect(refusal(() => rack.receive(cutting)).code).toBe('booked already');
    expect(rack.book(cutting).bought).toEqual([]);
    expect(rack.list({ kind: 'sheets' })).toMatchObject([{ count: 1, promised: 0 }]);
  });
});

describe('undoing the last booking', () => {
  it('leaves the rack as it was, for a plan that was held and one that was not', () => {
    const [one = '', sheet = ''] = rack.add([offcutOf(), sheetsOf(3)]);
    const cutting = cuttingOf('p', [
      { stock: plannedOf(one, offcutOf()) },
      { stock: plannedOf(sheet, sheetsOf(3), { fromRack: 3, bought: 10 }), times: 6 },
    ]);
    for (const held of [false, true]) {
      if (held) rack.hold(cutting);
      const before = rack.list();
      const { kept } = rack.book(cutting);
      expect(rack.list()).not.toEqual(before);
      expect(rack.undo().gone).toEqual(kept.map(({ mark }) => mark));
      expect(rack.list()).toEqual(before);
    }
    expect(rack.book(cutting).job.state).toBe('booked');
  });

  it('takes bookings back one by one', () => {
    const [one = '', two = ''] = rack.add([offcutOf(), offcutOf()]);
    const cutting = cuttingOf('p', [
      { stock: plannedOf(one, offcutOf()) },
      { stock: plannedOf(two, offcutOf()) },
    ]);
    rack.book(cutting, [{ layout: 0, times: 1 }]);
    rack.book(cutting);
    expect([rack.undo().booking, rack.undo().booking]).toEqual([2, 1]);
    expect(rack.list()).toMatchObject([
      { mark: one, promised: 0 },
      { mark: two, promised: 0 },
    ]);
    expect(refusal(() => rack.undo()).code).toBe('nothing to undo');
  });

  it('is refused where what it left has been used since', () => {
    const [one = ''] = rack.add([offcutOf()]);
    const { kept } = rack.book(cuttingOf('p', [{ stock: plannedOf(one, offcutOf()) }]));
    rack.remove(kept[0]?.mark ?? '', 1, 'sold');
    const before = rack.list({ gone: true });
    expect(refusal(() => rack.undo()).code).toBe('cannot be undone');
    expect(rack.list({ gone: true })).toEqual(before);
  });

  it('leaves free what was let go since', () => {
    const [one = '', two = ''] = rack.add([offcutOf(), offcutOf()]);
    const cutting = cuttingOf('p', [
      { stock: plannedOf(one, offcutOf()) },
      { stock: plannedOf(two, offcutOf()) },
    ]);
    rack.book(cutting, [{ layout: 0, times: 1 }]);
    rack.letGo('p');
    expect(rack.undo().job.state).toBe('let go');
    expect(rack.list()).toMatchObject([{ promised: 0 }, { promised: 0 }]);
  });
});

describe('rules for keeping offcuts', () => {
  it('are one for each metal and thickness', () => {
    const rule = { metal: 'tinplate', leastLength: 150, leastWidth: 25, worth: 300, trouble: 5 };
    rack.setKeepRule(rule);
    rack.setKeepRule({ ...rule, leastLength: 20 });
    rack.setKeepRule({ ...rule, thickness: 0.28, worth: 0 });
    expect(rack.keepRules()).toEqual([
      { ...rule, leastLength: 25, leastWidth: 20 },
      { ...rule, thickness: 0.28, worth: 0 },
    ]);
  });
});
