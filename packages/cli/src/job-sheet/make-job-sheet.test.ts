import { describe, expect, it } from 'vitest';
import { parseLength } from '../length/parse-length.js';
import { SMALL_ORDER } from '../order/small-order.test.support.js';
import { at, copyOf, smallPlan } from '../plan-file/small-plan.test.support.js';
import type { Block, JobSheet, Section, Table } from './job-sheet.js';
import { TRUE_PAGE } from './job-sheet.js';
import { checkJobSheet, jobSheet } from './make-job-sheet.js';
import { fetch } from './sections/fetch.js';

const { order: sized, file } = await smallPlan();
const sheet = jobSheet({ sized, file });

const sectionOf = ({ sections }: JobSheet, id: string): Section => {
  const found = sections.find((section) => section.id === id);
  if (found === undefined) throw new Error(`There is no section ${id}.`);
  return found;
};
const tablesOf = ({ blocks }: Section): readonly Table[] =>
  blocks.filter((block) => block.kind === 'table');
const stepsOf = ({ blocks }: Section) =>
  blocks.flatMap((block) => (block.kind === 'steps' ? block.steps : []));

describe('the packet of a plan', () => {
  it('goes through the work in its order', () => {
    expect([...new Set(sheet.sections.map(({ work }) => work))]).toEqual([
      'Look over',
      'Buy',
      'Fetch',
      'Shear',
      'Mark and notch',
      'Bend',
      'Join',
      'Wash',
      'Put back',
    ]);
  });

  it('puts parts that are made elsewhere where their work is', () => {
    const part = (id: string): Section => ({ id, title: id, onNewPage: true, blocks: [] });
    const parts = { shear: [part('own-map')], mark: [part('template-1')], charge: [part('quote')] };
    const put = jobSheet({ sized, file }, parts);
    const workOf = (id: string) => sectionOf(put, id).work;
    expect([workOf('own-map'), workOf('template-1'), workOf('quote')]).toEqual([
      'Shear',
      'Mark and notch',
      'Charge',
    ]);
    expect(put.sections.filter(({ id }) => id.startsWith('layout-'))).toEqual([]);
  });

  it('is the same for the same plan, and has another key for another', () => {
    expect(jobSheet({ sized, file: copyOf(file) })).toEqual(sheet);
    const other = copyOf(file);
    at(other.blanks, 0).quantity += 1;
    expect(jobSheet({ sized, file: other }).key).not.toBe(sheet.key);
  });

  it('has cautions where there is metal to cut and to handle', () => {
    for (const id of ['look-over', 'fetch', 'shear', 'mark', 'join']) {
      const said = sectionOf(sheet, id).blocks.flatMap((block) =>
        block.kind === 'caution' ? block.lines : [],
      );
      expect(said.join(' ')).toContain('gloves and eye protection');
    }
  });

  it('has a step for each thing to buy, fetch, shear, mark, bend and join', () => {
    const cutters = file.blanks.filter(({ strip }) => strip !== undefined).length;
    expect(stepsOf(sectionOf(sheet, 'buy'))).toHaveLength(file.buy.length);
    expect(stepsOf(sectionOf(sheet, 'shear'))).toHaveLength(file.layouts.length);
    expect(stepsOf(sectionOf(sheet, 'mark'))).toHaveLength(cutters);
    expect(stepsOf(sectionOf(sheet, 'join'))).toHaveLength(cutters);
    expect(sheet.sections.filter(({ work }) => work === 'Bend')).toHaveLength(cutters);
  });
});

describe('what is bought and fetched', () => {
  it('is all that is cut', () => {
    const counts = (id: string) => {
      const rows = tablesOf(sectionOf(sheet, id)).flatMap(({ rows: all, sums = 0 }) =>
        all.slice(0, all.length - sums),
      );
      return rows.reduce((sum, [count]) => sum + Number(count), 0);
    };
    const stocks = file.layouts.reduce((sum, { count }) => sum + count, 0);
    expect(counts('buy') + counts('fetch')).toBe(stocks);
  });

  it('tells where on the rack it lies', () => {
    const onRack = copyOf(file);
    const offcut = onRack.stock.find(({ kind }) => kind === 'offcut');
    if (offcut === undefined) throw new Error('The small order has an offcut.');
    const layout = at(onRack.layouts, 0);
    layout.stock = { id: offcut.id, kind: 'offcut', length: offcut.length, width: offcut.width };
    offcut.mark = 'B-7';
    offcut.place = 'third shelf';
    const [table] = tablesOf(fetch({ sized, file: onRack }));
    expect(table?.rows).toContainEqual(['1', 'rack B-7', '17 1/2 x 6 in', 'third shelf']);
  });
});

describe('the bend schedule', () => {
  it('has every mark of the plan, within half a mark of the rule', () => {
    let compared = 0;
    file.blanks.forEach(({ strip }, index) => {
      if (strip === undefined || strip.bends.length === 0) return;
      const tables = tablesOf(sectionOf(sheet, `bend-${index + 1}`));
      const bends = tables.find(({ columns }) => columns[0]?.heading === 'Bend');
      expect(bends?.rows).toHaveLength(strip.bends.length);
      strip.bends.forEach((bend, place) => {
        const [number, mark = '', fold, , foldTo] = bends?.rows[place] ?? [];
        const read = parseLength(mark, 'in');
        expect(read.ok && Math.abs(read.value - bend.at)).toBeLessThan(25.4 / 64);
        expect([number, fold]).toEqual([`${bend.number}`, bend.direction]);
        expect(Number(foldTo)).toBeCloseTo(bend.foldTo ?? bend.angle, 1);
        compared += 1;
      });
    });
    expect(compared).toBeGreaterThan(5);
  });

  it('is of cutters alone: an order of flat pieces has none, and nothing to join', async () => {
    const flat = SMALL_ORDER.replace(/ {2}- name: Heart[\s\S]*(?= {2}- name: Lid)/, '');
    const planned = await smallPlan(flat);
    const made = jobSheet({ sized: planned.order, file: planned.file });
    const works = new Set(made.sections.map(({ work }) => work));
    for (const work of ['Bend', 'Join', 'Mark and notch']) expect(works).not.toContain(work);
    expect(works).toContain('Shear');
  });
});

describe('offcuts to put back', () => {
  it('are those that the plan keeps', () => {
    const kept = file.layouts.flatMap(({ remnants }) => remnants.filter(({ keep }) => keep));
    expect(kept.length).toBeGreaterThan(0);
    const [table] = tablesOf(sectionOf(sheet, 'put-back'));
    expect(table?.rows).toHaveLength(kept.length);
    const steps = stepsOf(sectionOf(sheet, 'put-back')).map(({ text }) => text);
    expect(steps).toContain('Book it: stripwright book plan.json');
  });
});

describe('a packet is refused', () => {
  const section = (id: string, blocks: readonly Block[] = []): Section => ({
    id,
    title: id,
    onNewPage: false,
    blocks,
  });
  const steps = (id: string): Block => ({ kind: 'steps', steps: [{ id, text: 'Do' }] });
  const picture = (width: number, height: number): Block => ({
    kind: 'picture',
    trueScale: true,
    drawing: {
      title: 'Strip',
      description: '',
      page: { x: 0, y: 0, width, height },
      hatches: [],
      layers: [],
    },
  });
  const check = (sections: readonly Section[]) =>
    checkJobSheet({ title: '', summary: [], key: '', sections });

  it.each<[string, readonly Section[], RegExp]>([
    ['two sections of one id', [section('a'), section('a')], /Two sections .* "a"/],
    ['two steps of one id', [section('a', [steps('s'), steps('s')])], /Two steps .* "s"/],
    ['an id that is no address', [section('a b')], /"a b" of a section is unfit/],
    ['a page that is too wide', [section('a', [picture(190.1, 9)])], /would not print at true/],
    ['a page that is too high', [section('a', [picture(9, 255.1)])], /would not print at true/],
  ])('with %s', (_name, sections, fault) => {
    expect(() => check(sections)).toThrow(fault);
  });

  it('but not with one id for a section and a step, or a page that just fits', () => {
    const fits = picture(TRUE_PAGE.width, TRUE_PAGE.height);
    expect(() => check([section('a', [steps('a'), fits])])).not.toThrow();
  });
});
