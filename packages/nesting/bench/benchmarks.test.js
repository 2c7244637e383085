import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/**
 * The benchmarks run on what is built. Here they run on next to nothing: on made-up
 * data whose optima are plain to see, and on the smallest of the invented orders.
 */
const built = fileURLToPath(new URL('../dist/index.js', import.meta.url));

// Two pieces fill a sheet of B1, so that 5 need 3; four fill one of B2, so that 9 need 3.
const INSTANCES = `instance,sheet_length,sheet_width,item_length,item_width,demand
B1,100,60,50,60,5
B2,100,60,50,30,9
`;
const OPTIMA = `instance,rotation_allowed,status,sheets
B1,0,proven,3
B2,0,not solved within limits,
B1,1,proven,3
`;
// Four squares fill a sheet. Two 60 by 30 lie straight on one, and a third where it may turn.
const SHEETS = `instance,sheet_length,sheet_width,item_length,item_width
C1,100,100,50,50
C2,100,60,60,30
`;
const MOST_AREA = `instance,fixed_orientation_optimum,rotation_allowed_optimum
C1,10000,10000
C2,3600,5400
`;

let folder;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bench-'));
  await writeFile(join(folder, 'furniture-a.csv'), INSTANCES);
  await writeFile(join(folder, 'furniture-a-free-guillotine-optima.csv'), OPTIMA);
  await writeFile(join(folder, 'gcut.csv'), SHEETS);
  await writeFile(join(folder, 'gcut-free-guillotine-knapsack-optima.csv'), MOST_AREA);
});
afterAll(() => rm(folder, { recursive: true }));

/** Runs a benchmark and gives its exit code, its lines and its file of figures. */
async function run(script, ...options) {
  const json = join(folder, `${script}.json`);
  await rm(json, { force: true });
  const path = fileURLToPath(new URL(script, import.meta.url));
  const { code, lines } = await new Promise((done) => {
    execFile(process.execPath, [path, '--json', json, ...options], (error, stdout, stderr) => {
      done({ code: error?.code ?? 0, lines: `${stdout}${stderr}`.trimEnd().split('\n') });
    });
  });
  const figures = existsSync(json) ? JSON.parse(await readFile(json, 'utf8')) : undefined;
  return { code, lines, figures };
}

const first = (line) => line.trim().split(/\s+/)[0];

describe('the benchmarks', () => {
  it('have something built to run on', () => {
    expect(existsSync(built), 'run `npx tsc -b` first').toBe(true);
  });

  it.each(['2', '3', 'free'])('find the sheets of furniture orders, stages %s', async (stages) => {
    const bench = await run(
      'furniture.js',
      '--data',
      folder,
      '--seconds',
      '20',
      '--stages',
      stages,
    );
    expect(bench.lines.map(first).slice(0, 3)).toEqual(['instance', 'B1', 'B2']);
    expect(bench.code).toBe(0);
    const { rows, summary } = bench.figures;
    expect(rows.map(({ bound, found, proven }) => [bound, found, proven])).toEqual([
      [3, 3, true],
      [3, 3, true],
    ]);
    expect(summary).toMatchObject({ orders: 2, atTheBound: 2, published: 1, publishedProven: 1 });
  });

  it('tell their options, and refuse others in one line or two', async () => {
    const help = await run('shop.js', '--help');
    expect(help.code).toBe(0);
    expect(help.lines[0]).toContain('--seconds');
    for (const [option, said] of [
      ['--secs', "Unknown option '--secs'"],
      ['--seconds=soon', '--seconds takes a number of seconds; got soon'],
    ]) {
      const refused = await run('shop.js', option);
      expect(refused.code).toBe(2);
      expect(refused.lines[0]).toContain(said);
      expect(refused.lines.length).toBeLessThanOrEqual(2);
    }
  });

  it('print root bounds alone', async () => {
    const bench = await run('furniture.js', '--data', folder, '--root', '--turn', '--only', 'B2');
    expect(bench.lines.map(first).slice(0, 2)).toEqual(['instance', 'B2']);
    expect(bench.code).toBe(0);
    // 9 pieces of which 4 fill a sheet.
    expect(bench.figures.rows).toMatchObject([{ exact: 2.25, bound: 3, finished: true }]);
  });

  it.each([
    ['B1,0,proven,4', 'where 4 are proven least'],
    ['B1,0,proven,2', 'bound 3 above the published optimum 2'],
  ])('fail where a published optimum %s says otherwise', async (line, fault) => {
    const other = await mkdtemp(join(folder, 'other-'));
    await writeFile(join(other, 'furniture-a.csv'), INSTANCES);
    const text = OPTIMA.replace('B1,0,proven,3', line);
    await writeFile(join(other, 'furniture-a-free-guillotine-optima.csv'), text);
    const options = ['--data', other, '--stages', 'free', '--only', 'B1', '--seconds', '20'];
    const bench = await run('furniture.js', ...options);
    expect(bench.code).toBe(1);
    expect(bench.figures.faults).toHaveLength(1);
    expect(bench.figures.faults[0]).toContain(fault);
  });

  it('fail where nothing was measured', async () => {
    const bench = await run('furniture.js', '--data', folder, '--only', 'B9');
    expect(bench.code).toBe(1);
    expect(bench.figures.faults).toEqual(['nothing was measured']);
  });

  it('skip what has no data', async () => {
    const bench = await run('furniture.js', '--data', join(folder, 'absent'));
    expect(bench.lines[0]).toMatch(/^skipped: /);
    expect(bench.code).toBe(0);
    expect(bench.figures).toBeUndefined();
  });

  it('find the most area out of one sheet', async () => {
    const bench = await run('one-sheet.js', '--data', folder);
    expect(bench.lines.map(first).slice(0, 3)).toEqual(['instance', 'C1', 'C1']);
    expect(bench.code).toBe(0);
    expect(bench.figures.rows.map(({ found }) => found)).toEqual([10000, 10000, 3600, 5400]);
  });

  it('set the planner against others', async () => {
    const bench = await run('others.js', '--only', 'M1', '--seconds', '60');
    expect(first(bench.lines[0])).toBe('order');
    expect(bench.code).toBe(0);
    const { rows, summary } = bench.figures;
    expect(rows.map(({ method }) => method)).toEqual([
      'planner',
      'first fit',
      'explicit model',
      'picture packer',
    ]);
    expect(rows[0].costRatio).toBe(1);
    expect(rows[1].costRatio).toBeGreaterThanOrEqual(1);
    expect(summary.medians).toHaveLength(4);
  });

  it('plan an order of a shop in a process of its own', async () => {
    const bench = await run('shop.js', '--only', 'Q10', '--seconds', '1');
    expect(bench.lines.map(first).slice(0, 2)).toEqual(['order', 'Q10']);
    expect(bench.code).toBe(0);
    const [row] = bench.figures.rows;
    expect(row).toMatchObject({ name: 'Q10', types: 24, limit: 1, status: 'planned' });
    expect(row.found).toBeGreaterThanOrEqual(row.bound);
    expect(row.peakMegabytes).toBeGreaterThanOrEqual(row.restMegabytes);
  });
});
