import { createHash } from 'node:crypto';
import type { Stock } from '@stripwright/nesting';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { realPlanner } from '../environment.test.support.js';
import { onePieceASheet } from '../one-piece-a-sheet.test.support.js';
import { orderToProblem } from '../order/order-to-problem.js';
import { altered, read } from '../order/small-order.test.support.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { readPlanFile } from '../plan-file/read-plan-file.js';
import { at, copyOf } from '../plan-file/small-plan.test.support.js';
import { toPlanFile } from '../plan-file/to-plan-file.js';
import { onRack, viewOf } from '../rack-stock/rack-view.test.support.js';
import { withStockFromRack } from '../rack-stock/stock-from-rack.js';
import { planDigest } from './plan-digest.js';
import { toPlannedCutting } from './planned-cutting.js';

const ORDER = altered('    on hand: 1\n', '');

/** The small order planned from a rack, and read back from its file. */
async function planned(view: Parameters<typeof viewOf>[0], text = ORDER, planner = realPlanner) {
  const sized = read(text);
  const { problem, used } = withStockFromRack(
    orderToProblem(sized),
    sized.order.shop,
    viewOf(view),
  );
  const outcome = await planner.planCutting(problem);
  if (outcome.status !== 'planned') throw new Error(`The small order is ${outcome.status}.`);
  expect(realPlanner.verifyPlan(problem, outcome.plan)).toEqual([]);
  const file = toPlanFile(sized, problem, outcome.plan, used);
  return readPlanFile(JSON.stringify(file), 'plan.json');
}

describe('a plan as a rack takes it', () => {
  test('names what lies on the rack, how many it takes of it, and what is bought', async () => {
    const offcuts = [onRack('CCY', 12, 9, { rolled: 'along' }), onRack('CDV', 8, 7)];
    const sheets = [onRack('CER', 20, 14, { kind: 'sheets', count: 2 })];
    const onFile = await planned({ offcuts, sheets }, ORDER, onePieceASheet);
    const cutting = toPlannedCutting(onFile);
    expect(cutting).toMatchObject({
      name: 'Small order',
      rackId: 'rack of tests',
      smallestMark: 0.79375,
      plan: planDigest(onFile.file),
    });
    const told = cutting.stock.map(({ id, kind, mark, length, width, metal }) => [
      id,
      kind,
      mark,
      length,
      width,
      metal,
    ]);
    expect(told).toEqual([
      ['Large', 'sheets', undefined, 711.2, 508, 'tinplate'],
      ['Small', 'sheets', 'CER', 508, 355.6, 'tinplate'],
      ['A', 'offcut', undefined, 444.5, 152.4, 'tinplate'],
      ['rack CCY', 'offcut', 'CCY', 304.8, 228.6, 'tinplate'],
      ['rack CDV', 'offcut', 'CDV', 203.2, 177.8, 'tinplate'],
    ]);
    // One piece a sheet cuts the first stock alone: eight large ones are bought.
    expect(cutting.stock.map(({ fromRack, beside, bought }) => [fromRack, beside, bought])).toEqual(
      [
        [0, 0, 8],
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 0],
      ],
    );
    expect(cutting.stock[3]).toMatchObject({ rolled: 'along' });
    expect(cutting.stock[4]).not.toHaveProperty('rolled');
    expect(cutting.stock[0]).not.toHaveProperty('thickness');
  });

  test('counts sheets of the rack before those that are bought, and those beside it', async () => {
    const count = async (text: string, sheets: number) => {
      const pile = onRack('CER', 28, 20, { kind: 'sheets', count: sheets });
      const onFile = await planned(sheets === 0 ? {} : { sheets: [pile] }, text, onePieceASheet);
      const { fromRack, beside, bought } = at(toPlannedCutting(onFile).stock, 0);
      return [fromRack, beside, bought];
    };
    expect(await count(ORDER, 3)).toEqual([3, 0, 5]);
    expect(await count(ORDER, 20)).toEqual([8, 0, 0]);
    expect(await count(altered('on hand: 1', 'on hand: 2'), 0)).toEqual([0, 2, 6]);
  });

  test('has what it is of in full, whether the plan says it of each stock or of all', async () => {
    const thick = ORDER.replace('  hem: 1/4', '  thickness: 0.011 in\n  hem: 1/4');
    const mixed = thick.replace('size: 20 x 14 in', 'size: 20 x 14 in\n    metal: copper');
    for (const text of [thick, mixed]) {
      const cutting = toPlannedCutting(await planned({}, text));
      expect(at(cutting.stock, 0)).toMatchObject({ metal: 'tinplate', thickness: 0.2794 });
    }
    const copper = at(toPlannedCutting(await planned({}, mixed)).stock, 1);
    expect(copper).toMatchObject({ metal: 'copper', thickness: 0.2794 });
  });

  test('keeps offcuts with the longer side as length; the rolling is seen along it', async () => {
    const rolled = ORDER.replace('price: 7.40', 'price: 7.40\n    rolled: across');
    const onFile = await planned({}, rolled, onePieceASheet);
    const file = copyOf(onFile.file);
    const layout = at(file.layouts, 0);
    layout.remnants = [
      { x: 508, y: 0, length: 203.2, width: 508, keep: true, value: 1.25 },
      { x: 0, y: 254, length: 508, width: 254, keep: true, value: 0 },
      { x: 0, y: 203.2, length: 50.8, width: 25.4, keep: false, value: 0 },
    ];
    const again = readPlanFile(JSON.stringify(file), 'plan.json');
    const [first] = toPlannedCutting(again).layouts;
    expect(first?.keeps).toEqual([
      { length: 508, width: 203.2, metal: 'tinplate', rolled: 'along', value: 125 },
      { length: 508, width: 254, metal: 'tinplate', rolled: 'across', value: 0 },
    ]);
  });
});

const sides = fc.tuple(fc.integer({ min: 4, max: 20 }), fc.integer({ min: 4, max: 12 }));

test('pieces, what is kept and scrap add up to the stock, and marks survive', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(sides, { minLength: 1, maxLength: 4 }),
      fc.constantFrom('', '    kerf: 1/16 in\n', '    edge trim: 1/4 in\n'),
      async (offcuts, shear) => {
        const marks = ['CCY', 'CDV', 'CER', 'CFN'];
        const view = offcuts.map(([length, width], index) =>
          onRack(at(marks, index), Math.max(length, width), Math.min(length, width)),
        );
        const text = ORDER.replace('  shear:\n', `  shear:\n${shear}`);
        const onFile = await planned({ offcuts: view }, text);
        const { file } = onFile;
        const cutting = toPlannedCutting(onFile);
        const area = ({ length, width }: { readonly length: number; readonly width: number }) =>
          length * width;
        cutting.layouts.forEach(({ stock, times, keeps, scrap }, index) => {
          const layout = at(file.layouts, index);
          const pieces = layout.pieces.reduce((sum, piece) => sum + area(piece), 0);
          const kept = keeps.reduce((sum, keep) => sum + area(keep), 0);
          const whole = area(at(cutting.stock, stock));
          expect(pieces + kept + scrap).toBeCloseTo(whole, 2);
          expect(scrap).toBeGreaterThanOrEqual(0);
          expect(times).toBe(layout.count);
          expect(at(cutting.stock, stock).id).toBe(layout.stock.id);
          expect(keeps).toHaveLength(layout.remnants.filter(({ keep }) => keep).length);
        });
        for (const { id, mark } of cutting.stock) {
          expect(mark).toBe(id.startsWith('rack ') ? id.slice(5) : undefined);
        }
        const used = new Set(cutting.layouts.map(({ stock }) => stock));
        cutting.stock.forEach(({ mark, fromRack }, index) => {
          if (mark !== undefined) expect(fromRack).toBe(used.has(index) ? 1 : 0);
        });
      },
    ),
    { numRuns: 25 },
  );
});

describe('the digest of a plan', () => {
  const fileOf = (fields: object) => fields as PlanFile;

  test('is SHA-256 of its contents with sorted fields and no white space', () => {
    const sorted = '{"a":[1,"x",null],"b":{"c":true,"d":0.5}}';
    const digest = createHash('sha256').update(sorted).digest('hex');
    expect(planDigest(fileOf({ b: { d: 0.5, c: true }, a: [1, 'x', null] }))).toBe(digest);
    expect(planDigest(fileOf({ a: [1, 'x', null], z: undefined, b: { c: true, d: 0.5 } }))).toBe(
      digest,
    );
    // Known answer: FIPS 180-4's hash of the two bytes {} (from memory of common tools).
    expect(planDigest(fileOf({}))).toBe(
      '44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a',
    );
  });

  test('changes with any field', async () => {
    const { file } = await planned({ offcuts: [onRack('CCY', 12, 9)] });
    const other: Stock['id'] = 'another';
    expect(planDigest({ ...file, order: { ...file.order, name: other } })).not.toBe(
      planDigest(file),
    );
    const rack = { ...at([file.rack], 0), revision: 5 } as NonNullable<PlanFile['rack']>;
    expect(planDigest({ ...file, rack })).not.toBe(planDigest(file));
    expect(planDigest(JSON.parse(JSON.stringify(file, null, 8)))).toBe(planDigest(file));
  });
});
