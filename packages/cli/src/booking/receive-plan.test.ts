import { join } from 'node:path';
import { expect, test } from 'vitest';
import { realPlanner } from '../environment.test.support.js';
import { nodeEnvironment } from '../node-environment.js';
import { good, rackShop } from '../rack-shop.test.support.js';
import { receivePlan } from './receive-plan.js';

test('sheets that a plan buys come to the rack and are promised to it', async () => {
  const shop = rackShop();
  await good(shop, 'plan order.yaml --quiet --out packet');
  const environment = { ...nodeEnvironment(), cwd: shop.cwd, planner: realPlanner };
  const name = join('packet', 'plan.json');
  await shop.onRack(async () => undefined);
  const rack = environment.racks.open(join(shop.cwd, 'usual', 'rack.sqlite'));
  try {
    const { job, sheets, report } = await receivePlan(name, rack, environment);
    expect(sheets.length).toBeGreaterThan(0);
    const lying = rack.list({ kind: 'sheets' });
    expect(lying.map(({ name, count }) => ({ name, count }))).toEqual(sheets);
    for (const { promised } of lying) expect(promised).toBeGreaterThan(0);
    expect(job).toMatchObject({ name: 'Small order', state: 'held' });
    const all = sheets.reduce((sum, { count }) => sum + count, 0);
    expect(report[0]).toContain(`Received for Small order (job 1): ${all} sheet`);
    expect(report.join('\n')).toContain(sheets[0]?.name ?? 'a name');
    await expect(receivePlan(name, rack, environment)).rejects.toThrow('came to the rack before');
  } finally {
    rack.close();
  }
});
