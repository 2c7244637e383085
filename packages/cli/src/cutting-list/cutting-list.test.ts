import { gaugeChanges } from '@stripwright/nesting';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Section, Table } from '../job-sheet/job-sheet.js';
import { SMALL_ORDER } from '../order/small-order.test.support.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { planOnFile } from '../plan-file/plan-on-file.js';
import { anyPlan } from '../plan-file/random-plan.test.support.js';
import { smallPlan } from '../plan-file/small-plan.test.support.js';
import { followList, type Sheet } from './bench.test.support.js';
import { letteredStrips } from './cutting-list.js';
import { cuttingListSections } from './cutting-list-sections.js';

const RUNS = { numRuns: 150 };

const tablesOf = ({ blocks }: Section): readonly Table[] =>
  blocks.flatMap((block) => (block.kind === 'table' ? [block] : []));

/** Sizes in marks, without order. */
const sizes = (sheets: readonly Sheet[], mark: number): readonly string[] =>
  sheets
    .map(({ length, width }) => `${(length / mark).toFixed(3)} x ${(width / mark).toFixed(3)}`)
    .sort();

/** Follows every list of a plan and compares what comes of it with the plan. */
function expectListsToCut(file: PlanFile): void {
  const sections = cuttingListSections({ file });
  expect(sections.map(({ id }) => id)).toEqual(file.layouts.map((_, i) => `layout-${i + 1}`));
  const { problem, plan } = planOnFile(file);
  file.layouts.forEach((layout, index) => {
    const section = sections[index];
    if (section === undefined) throw new Error(`no section ${index}`);
    const list = tablesOf(section).find(({ caption }) => caption?.startsWith('Cuts'));
    if (layout.cuts.length === 0) {
      expect(list).toBeUndefined();
      return;
    }
    if (list === undefined) throw new Error('no list of cuts');
    const { units, smallestMark: mark } = file.order;
    const done = followList(list, layout.stock, units, file.shear.kerf ?? 0);
    expect(done.cuts).toBe(layout.cuts.length);
    const planned = plan.layouts[index];
    if (planned === undefined) throw new Error('no such layout');
    expect(done.settings).toBe(gaugeChanges(problem, planned));
    file.blanks.forEach(({ id }, place) => {
      const wanted = layout.pieces.filter(({ blank }) => blank === id);
      expect(sizes(done.piles.get(place + 1) ?? [], mark)).toEqual(sizes(wanted, mark));
    });
    // The map has the same letters as the list, on rectangles of the stock.
    const named = letteredStrips(planOnFile(file), index);
    const told = list.rows.flatMap((row) => [...(row[4] ?? '').matchAll(/\b[A-Z]+(?=[,:])/g)]);
    expect(named.map(({ letter }) => letter)).toEqual(told.map(([letter]) => letter));
    const kept = layout.remnants.filter(({ keep }) => keep);
    expect(sizes(done.rack, mark)).toEqual(sizes(kept, mark));
    const scrap = layout.remnants.filter(({ keep }) => !keep);
    expect(sizes(done.bin, mark)).toEqual(sizes(scrap, mark));
    // The steps cover every cut too, one for each setting.
    const steps = section.blocks.flatMap((block) => (block.kind === 'steps' ? block.steps : []));
    expect(steps.length).toBe(done.settings + (layout.count > 1 ? 1 : 0));
    const stepped = steps.flatMap(({ text }) => {
      const cuts = /cuts? (\d+)(?: to (\d+))?$/.exec(text);
      return cuts === null ? [] : [Number(cuts[2] ?? cuts[1]) - Number(cuts[1]) + 1];
    });
    expect(stepped.reduce((sum, count) => sum + count, 0)).toBe(layout.cuts.length);
    const piles = tablesOf(section).at(-1);
    expect(piles?.rows.at(-1)?.slice(2)).toEqual([
      `${layout.pieces.length}`,
      `${layout.pieces.length * layout.count}`,
    ]);
  });
}

describe('a cutting list', () => {
  it('followed word for word at the shear, gives the plan, with as few settings as it counts', () => {
    fc.assert(fc.property(anyPlan, expectListsToCut), RUNS);
  });

  it('of an order that was really planned', async () => {
    for (const stages of ['two', 'three', 'free']) {
      const order = SMALL_ORDER.replace(
        '    longest cut: 36 in\n',
        `    longest cut: 36 in\n    stages: ${stages}\n    edge trim: 1/8 in\n`,
      );
      expectListsToCut((await smallPlan(order)).file);
    }
  });

  it('cannot be followed where a row is wrong', async () => {
    const { file } = await smallPlan();
    const index = file.layouts.findIndex(({ cuts }) => cuts.length > 2);
    const layout = file.layouts[index];
    const section = cuttingListSections({ file })[index];
    if (layout === undefined || section === undefined) throw new Error('nothing is cut');
    const [list] = tablesOf(section);
    if (list === undefined) throw new Error('no list');
    const follow = (rows: Table['rows']) => () =>
      followList({ ...list, rows }, layout.stock, 'in', 0);
    expect(follow(list.rows)).not.toThrow();
    expect(follow(list.rows.slice(1))).toThrow();
    expect(follow(list.rows.slice(0, -1))).toThrow();
    expect(follow([...list.rows].reverse())).toThrow();
  });

  it('has ids that stand once in the packet, and the same every time', () => {
    fc.assert(
      fc.property(anyPlan, (file) => {
        const sections = cuttingListSections({ file });
        const ids = sections.flatMap(({ id, blocks }) => [
          id,
          ...blocks.flatMap((b) => (b.kind === 'steps' ? b.steps.map((step) => step.id) : [])),
        ]);
        expect(new Set(ids).size).toBe(ids.length);
        for (const id of ids) expect(id).toMatch(/^[a-z0-9-]+$/);
        expect(JSON.stringify(cuttingListSections({ file }))).toBe(JSON.stringify(sections));
      }),
      { numRuns: 20 },
    );
  });
});
