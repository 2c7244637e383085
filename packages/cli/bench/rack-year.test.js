import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { SaxesParser } from 'saxes';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seededRandom, yearOrders } from './year-orders.js';

// The benchmark runs on what is built; here it lives a year of three orders.
const script = fileURLToPath(new URL('rack-year.js', import.meta.url));

let folder;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bench-'));
});
afterAll(() => rm(folder, { recursive: true }));

describe('the year with a rack', () => {
  it('prints a line a habit, and writes figures and a chart', async () => {
    const [json, chart] = [join(folder, 'year.json'), join(folder, 'year.svg')];
    const { stdout } = await promisify(execFile)(process.execPath, [
      script,
      ...['--orders', '3', '--seconds', '1', '--json', json, '--chart', chart],
    ]);
    const lines = stdout.trimEnd().split('\n');
    expect(lines.map((line) => line.split(/ {2,}/)[0])).toEqual([
      'habit',
      'with the rack',
      'newest first',
      'without',
    ]);
    const years = JSON.parse(await readFile(json, 'utf8'));
    for (const { steps } of years) {
      expect(steps).toHaveLength(3);
      const { bought, used, area, proven } = steps.at(-1);
      expect(proven).toBeLessThanOrEqual(3);
      expect(proven).toBeGreaterThan(0);
      // Metal is neither made nor lost: what is bought is in cutters, on the rack, or scrap.
      expect(bought).toBeGreaterThanOrEqual(used + area);
      expect(steps.map(({ money }) => money)).toEqual(
        steps.map(({ money }) => money).sort((one, other) => one - other),
      );
    }
    // All three cut the same cutters.
    expect(new Set(years.map(({ steps }) => steps.at(-1).used)).size).toBe(1);
    const titles = [];
    const parser = new SaxesParser();
    parser.on('opentag', ({ name }) => titles.push(name));
    parser.write(await readFile(chart, 'utf8')).close();
    expect(titles).toEqual(expect.arrayContaining(['svg', 'title', 'desc']));
  });

  it('has the same orders for the same seed', () => {
    expect(yearOrders(7, 5)).toEqual(yearOrders(7, 5));
    expect(yearOrders(7, 5)).not.toEqual(yearOrders(8, 5));
    const random = seededRandom(1);
    for (let draw = 0; draw < 1_000; draw++) expect(random()).toBeLessThan(1);
  });
});
