import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import type { PlanFile } from '../plan-file/plan-file.js';
import {
  good,
  offcut,
  RACK_ORDER,
  type RackShop,
  rackShop,
  refusal,
  USUAL,
} from '../rack-shop.test.support.js';

/** An order that takes more than one of the offcuts, and no sheet. */
const ORDER = RACK_ORDER.replace('  hem: 1/4', '  thickness: 0.28 mm\n  hem: 1/4').replace(
  /offcuts:\n.*\n/,
  '',
);
const THICK = { thickness: 0.28 };

let shop: RackShop;
let marks: readonly string[];
let file: PlanFile;

const planFile = () => join(shop.cwd, 'packet', 'plan.json');
/** The mark of the offcut that a layout, counted from 1, is cut from. */
const markOf = (layout: number) => file.layouts[layout - 1]?.stock.id.replace('rack ', '') ?? '';

beforeEach(async () => {
  shop = rackShop(ORDER);
  marks = shop.stock([
    offcut(24, 4, THICK),
    offcut(13, 6, THICK),
    offcut(23, 3, { ...THICK, place: 'right rack' }),
  ]);
  await good(shop, 'plan order.yaml --quiet --out packet');
  file = JSON.parse(readFileSync(planFile(), 'utf8'));
});

test('the plan of these tests is cut from offcuts of the rack, in several layouts', () => {
  expect(file.buy).toEqual([]);
  expect(file.layouts.length).toBeGreaterThan(1);
  for (const { stock } of file.layouts) expect(stock.id).toMatch(/^rack /);
});

describe('book', () => {
  test('takes off what was cut, puts on what is kept, and gives its marks and the scrap', async () => {
    const stdout = await good(shop, 'book packet/plan.json');
    expect(stdout).toMatch(/^Booked: Small order \(booking 1 of job 1\)\nLeft to book: nothing\n/);
    for (const layout of file.layouts.keys()) {
      expect(stdout).toMatch(new RegExp(`^ +1 {2}${markOf(layout + 1)} +[\\d/ ]+ x `, 'm'));
    }
    const kept = file.layouts.flatMap(({ remnants }) => remnants.filter(({ keep }) => keep));
    const fresh = shop.free().filter(([mark]) => !marks.includes(`${mark}`));
    expect(fresh).toHaveLength(kept.length);
    expect(kept.length).toBeGreaterThan(0);
    for (const [mark] of fresh) {
      expect(stdout).toMatch(new RegExp(`^ {2}${mark} {2}.* in +map \\d, cutting 1$`, 'm'));
    }
    expect(stdout).toMatch(/^Scrap: [\d.]+ oz \(\d+ sq in\)$/m);
    expect(stdout).toContain('Sheared edges cut: wear gloves and eye protection.');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('is refused the second time, and says what to do', async () => {
    await good(shop, 'book packet/plan.json');
    const before = shop.free();
    expect(await refusal(shop, 'book packet/plan.json')).toBe(
      'stripwright: the plan is booked already, as job 1 (Small order); for another such order, plan again from the rack as it is now\n',
    );
    expect(shop.free()).toEqual(before);
  });

  test('knows a plan by its contents, however its file is written', async () => {
    await good(shop, 'book packet/plan.json');
    writeFileSync(join(shop.cwd, 'again.json'), JSON.stringify(file));
    expect(await refusal(shop, 'book again.json')).toContain('the plan is booked already');
  });

  test('takes a few layouts a day, however they are given', async () => {
    const last = file.layouts.length;
    const first = await good(shop, 'book packet/plan.json --layout 1');
    expect(first).toContain(`Left to book: map 2 x 1`);
    expect(shop.free().map(([mark]) => mark)).not.toContain(markOf(1));
    // What it still takes is promised to it.
    expect(shop.free().map(([mark]) => mark)).not.toContain(markOf(2));
    expect(await refusal(shop, 'book packet/plan.json --layout 1')).toBe(
      'stripwright: layout 1 is booked already\n',
    );
    expect(await refusal(shop, `book packet/plan.json --layout ${last + 1}`)).toContain(
      `the plan has no layout ${last + 1}`,
    );
    expect(await refusal(shop, 'book packet/plan.json --layout 2x2')).toContain(
      'left to be booked 1 times, not 2',
    );
    expect(await refusal(shop, 'book packet/plan.json --layout 0')).toMatch(
      /^stripwright: --layout must be the numbers of cut maps .*; found 0\n$/,
    );
    expect(await good(shop, 'book packet/plan.json')).toContain('Left to book: nothing');
  });

  test('takes --layout again and again, and several at once', async () => {
    const several = JSON.parse(await good(shop, 'book packet/plan.json --layout 1,2 --json'));
    await good(shop, 'book --undo');
    const again = JSON.parse(
      await good(shop, 'book packet/plan.json --layout 1 --layout 2 --json'),
    );
    const booked = again.job.layouts.map((layout: { booked: number }) => layout.booked);
    expect(booked.slice(0, 2)).toEqual([1, 1]);
    expect(several.job.layouts).toEqual(again.job.layouts);
  });

  test('is refused where an offcut is gone or changed since it was planned', async () => {
    const mark = markOf(1);
    shop.onRack((rack) => rack.correct(mark, { width: 20 }));
    expect(await refusal(shop, 'book packet/plan.json')).toBe(
      `stripwright: ${mark} is not as it was when planned; plan again\n`,
    );
    shop.onRack((rack) => rack.remove(mark, 1, 'lost'));
    expect(await refusal(shop, 'book packet/plan.json')).toBe(
      `stripwright: ${mark} is not on the rack any more; plan again\n`,
    );
    expect(shop.free()).toHaveLength(2);
  });

  test('tells at once what the rest of the plan can no longer have', async () => {
    shop.onRack((rack) => rack.remove(markOf(2), 1, 'lost'));
    const stdout = await good(shop, 'book packet/plan.json --layout 1');
    expect(stdout.replaceAll('\n  ', ' ')).toContain(
      `What is left of the plan cannot be cut as planned: ${markOf(2)} is gone, changed or promised to another plan. Plan what is left again.`,
    );
  });

  test('is refused on another rack than the plan was made from', async () => {
    shop.stock([], 'other.rack', 'another');
    expect(await refusal(shop, 'book packet/plan.json --rack other.rack')).toContain('rack');
    expect(shop.free()).toHaveLength(3);
  });

  test('verifies the plan first', async () => {
    const [first] = file.layouts;
    if (first !== undefined) first.pieces = first.pieces.slice(1);
    writeFileSync(planFile(), JSON.stringify(file));
    expect(await refusal(shop, 'book packet/plan.json')).toMatch(/^packet\/plan\.json: /);
    expect(await refusal(shop, 'hold packet/plan.json')).toMatch(/^packet\/plan\.json: /);
    expect(shop.free()).toHaveLength(3);
  });

  test('books a plan that was made without a rack, and puts on the rack what it keeps', async () => {
    const bare = rackShop();
    await good(bare, 'plan order.yaml --quiet --out packet');
    const booked = JSON.parse(await good(bare, 'book packet/plan.json --json'));
    expect(booked.taken.length).toBeGreaterThan(0);
    expect(booked.bought.length).toBeGreaterThan(0);
    expect(booked).not.toHaveProperty('scrapGrams');
    const marksKept = booked.kept.map(({ mark }: { mark: string }) => mark);
    expect(bare.free().map(([mark]) => mark)).toEqual(marksKept);
    expect(booked.kept[0].layout).toBeGreaterThanOrEqual(1);
  });

  test('cuts sheets that came to the rack before, which no other plan had meanwhile', async () => {
    const bare = rackShop(RACK_ORDER.replace(/offcuts:\n.*\n/, ''));
    await good(bare, 'plan order.yaml --quiet --out packet');
    await good(bare, 'rack receive packet/plan.json');
    const pile = bare.onRack((rack) => rack.list({ kind: 'sheets' })[0]);
    expect(pile?.count).toBeGreaterThan(0);
    const other: PlanFile = JSON.parse(await good(bare, 'plan order.yaml --json'));
    expect(other.stock.flatMap(({ mark }) => mark ?? [])).toEqual([]);
    const stdout = await good(bare, 'book packet/plan.json');
    expect(stdout).not.toContain('Bought');
    expect(stdout).toMatch(
      new RegExp(`^Taken off the rack\\n.*\\n +${pile?.count} {2}${pile?.mark} `, 'm'),
    );
  });

  test('needs a plan', async () => {
    expect(await refusal(shop, 'book')).toBe(
      'stripwright: name the plan.json that was cut by, or give --undo\n',
    );
  });
});

describe('book --undo', () => {
  test('takes back the last booking, whatever its plan, and then the one before', async () => {
    const before = shop.free();
    await good(shop, 'book packet/plan.json --layout 1');
    const booked = JSON.parse(await good(shop, 'book packet/plan.json --json'));
    const undone = await good(shop, 'book --undo');
    expect(undone).toContain('Undone: booking 2 of job 1, Small order\n');
    for (const { mark } of booked.kept) expect(undone).toContain(mark);
    expect(JSON.parse(await good(shop, 'book --undo --json'))).toMatchObject({
      booking: 1,
      job: { number: 1, name: 'Small order' },
    });
    expect(shop.free()).toEqual(before);
    expect(await refusal(shop, 'book --undo')).toBe(
      'stripwright: no booking stands that could be undone\n',
    );
    // Then it can be booked once more.
    expect(await good(shop, 'book packet/plan.json')).toContain('Left to book: nothing');
  });

  test('stands alone', async () => {
    for (const words of ['book packet/plan.json --undo', 'book --undo --layout 1']) {
      expect(await refusal(shop, words)).toContain('leave the rest out');
    }
  });
});

describe('hold', () => {
  test('keeps the metal for a plan until it is let go', async () => {
    const stdout = await good(shop, 'hold packet/plan.json');
    expect(stdout).toContain('Held: Small order (job 1)\n');
    for (const layout of file.layouts.keys()) expect(stdout).toContain(markOf(layout + 1));
    const taken = file.layouts.map((_, index) => markOf(index + 1));
    const seen = async () => {
      const other: PlanFile = JSON.parse(await good(shop, 'plan order.yaml --json'));
      return other.stock.flatMap(({ mark }) => mark ?? []);
    };
    expect(await seen()).toEqual(marks.filter((mark) => !taken.includes(mark)));
    expect(await good(shop, 'hold packet/plan.json --let-go')).toBe(
      'Let go: Small order (job 1); others may have its metal.\n',
    );
    expect(await seen()).toEqual(marks);
    expect(await refusal(shop, 'hold packet/plan.json --let-go')).toContain('was let go before');
  });

  test('refuses another plan of the same metal, which may not be booked either', async () => {
    await good(shop, 'plan order.yaml --quiet --seed 2 --out second');
    shop.write('second.yaml', ORDER.replace('Small order', 'Second order'));
    await good(shop, 'plan second.yaml --quiet --out second');
    await good(shop, 'hold packet/plan.json');
    for (const command of ['hold', 'book']) {
      expect(await refusal(shop, `${command} second/plan.json`)).toMatch(
        /^stripwright: \w+ is promised to job 1 \(Small order\); let that go, or plan again\n$/,
      );
    }
    expect(await good(shop, 'book packet/plan.json')).toContain('Left to book: nothing');
    expect(await refusal(shop, 'book second/plan.json')).toMatch(
      /not on the rack any more; plan again/,
    );
  });

  test('says so of a plan that takes nothing from the rack, and prints the job for a program', async () => {
    await good(shop, 'plan order.yaml --quiet --no-rack --out bare');
    expect(await good(shop, 'hold bare/plan.json')).toContain('; it takes nothing from the rack\n');
    expect(JSON.parse(await good(shop, 'hold bare/plan.json --json')).job).toMatchObject({
      name: 'Small order',
      state: 'held',
      layouts: expect.arrayContaining([{ layout: 1, times: expect.any(Number), booked: 0 }]),
    });
  });

  test('makes the usual rack where there is none', async () => {
    const bare = rackShop();
    await good(bare, 'plan order.yaml --quiet --out packet');
    await good(bare, 'hold packet/plan.json');
    expect(readFileSync(join(bare.cwd, USUAL)).length).toBeGreaterThan(0);
  });
});
