import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../plan-file/plan-file.js';
import { at, copyOf, smallPlan } from '../plan-file/small-plan.test.support.js';
import { planReport } from './plan-report.js';

/** The small plan as it would be with packs, book values, priced offcuts and spares. */
async function priced(): Promise<PlanFile> {
  const file = copyOf((await smallPlan()).file);
  const sheet = file.stock.find(({ id }) => id === 'Large');
  if (sheet?.kind !== 'sheet') throw new Error('There is no such sheet.');
  sheet.packSize = 5;
  sheet.onHand = 1;
  sheet.bookValue = 6.5;
  at(file.blanks, 0).spares = 4;
  const layout = at(file.layouts, 0);
  layout.stock = { id: 'Large', kind: 'sheet', length: sheet.length, width: sheet.width };
  layout.count = 4;
  layout.remnants = [
    { x: 0, y: 0, length: 254, width: 508, keep: true, value: 1.25 },
    { x: 254, y: 0, length: 25.4, width: 25.4, keep: false, value: 0 },
  ];
  file.layouts = [layout];
  file.buy = [{ stock: 'Large', count: 5, cost: 37 }];
  file.spares = [{ blank: 'Heart', count: 3 }];
  file.parts = { bought: 37, fromShop: 6.5, kept: 12.4 };
  file.cost = 31.1;
  return file;
}

describe('the report of a plan', () => {
  test('shows where the cost comes from, where more than the purchases count', async () => {
    const lines = planReport(await priced());
    const costs = lines.filter((line) => /^ +(Total|Used|Less|Cost)/.test(line));
    expect(costs.map((line) => line.trim().split(/ {2,}/))).toEqual([
      ['Total', '$37.00'],
      ['Used from the shop', '$6.50'],
      ['Less what is kept', '-$12.40'],
      ['Cost', '$31.10'],
    ]);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('tells packs, spares, and what offcuts are worth', async () => {
    const text = planReport(await priced()).join('\n');
    // 4 used, 1 of them on hand, 5 bought: 2 are left over.
    expect(text).toContain('  Packs: Large in 1 pack of 5, 2 left over\n');
    expect(text).toContain('  From the shop: 1 x Large\n');
    expect(text).toContain('  Spares at no cost: 3 x Heart\n');
    expect(text).toMatch(/^ +4 {2}20 x 10 in {2}map 1 +\$1\.25$/m);
  });

  test('says none of it where there is none', async () => {
    const text = planReport((await smallPlan()).file).join('\n');
    expect(text).not.toMatch(/Packs|Spares|Used from|Less what|^ +Cost|Worth/m);
    expect(text).toMatch(/^ +Total +\$/m);
  });
});
