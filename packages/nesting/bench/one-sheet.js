/**
 * The most area that free guillotine cuts get out of one sheet, against published
 * optima: J.E. Beasley, "Algorithms for unconstrained two-dimensional guillotine
 * cutting", JORS 36 (1985) 297-306, instances gcut1-12 of the OR-Library; optima by
 * G. Cintra and Y. Wakabayashi, fixed and turned. Run by `npm run bench:one-sheet`,
 * with `-- --json FILE` to have the figures in a file too. Fails where one differs.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { boxRaster } from '../dist/box-solver/raster-points.js';
import { FreePricer } from '../dist/free-guillotine/free-pricer.js';

const DATA = new URL('../../../../shared/benchmarks/', import.meta.url);
const INSTANCES = new URL('gcut.csv', DATA);
const OPTIMA = new URL('gcut-free-guillotine-knapsack-optima.csv', DATA);
const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };

const { values: options } = parseArgs({ options: { json: { type: 'string' } } });

function readCsv(file) {
  const [heading, ...lines] = readFileSync(file, 'utf8').trim().split(/\r?\n/);
  const names = heading.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((name, column) => [name, cells[column]]));
  });
}

function boxOf(items, mayTurn) {
  const lays = items.flatMap(({ item_length, item_width }, piece) => {
    const lay = { piece, turned: false, length: Number(item_length), width: Number(item_width) };
    const turned = { piece, turned: true, length: lay.width, width: lay.length };
    return mayTurn ? [lay, turned] : [lay];
  });
  const [{ sheet_length, sheet_width }] = items;
  return {
    length: Number(sheet_length),
    width: Number(sheet_width),
    firstCuts: ['along', 'across'],
    lays,
  };
}

function solve(instance, items, mayTurn, published) {
  const start = performance.now();
  const box = boxOf(items, mayTurn);
  const areas = items.map(({ item_length, item_width }) => item_length * item_width);
  const priced = new FreePricer([box], limits).price(areas, 0);
  const counts = priced.patterns(0)[0]?.pattern.counts ?? [];
  const seconds = (performance.now() - start) / 1000;
  const { xs, ys } = boxRaster(box, limits);
  return {
    instance,
    turned: mayTurn,
    published,
    bound: priced.worth[0],
    found: counts.reduce((sum, [piece, copies]) => sum + areas[piece] * copies, 0),
    points: [xs.at.length, ys.at.length],
    seconds,
  };
}

function print(rows) {
  const heading = ['instance', 'turned', 'published', 'bound', 'found', 'points', 'seconds'];
  const cells = rows.map(({ instance, turned, published, bound, found, points, seconds }) => [
    instance,
    turned ? 'yes' : 'no',
    String(published),
    String(bound),
    String(found),
    points.join(' x '),
    seconds.toFixed(3),
  ]);
  const table = [heading, ...cells];
  const widths = heading.map((_, column) => Math.max(...table.map((row) => row[column].length)));
  for (const row of table) {
    const line = row.map((cell, column) =>
      column === 0 ? cell.padEnd(widths[column]) : cell.padStart(widths[column]),
    );
    process.stdout.write(`${line.join('  ')}\n`);
  }
}

if (existsSync(INSTANCES) && existsSync(OPTIMA)) {
  const instances = readCsv(INSTANCES);
  const rows = readCsv(OPTIMA).flatMap(
    ({ instance, fixed_orientation_optimum, rotation_allowed_optimum }) => {
      const items = instances.filter((row) => row.instance === instance);
      return [
        solve(instance, items, false, Number(fixed_orientation_optimum)),
        solve(instance, items, true, Number(rotation_allowed_optimum)),
      ];
    },
  );
  print(rows);
  const wrong = rows.filter((row) => row.found !== row.published || row.bound !== row.published);
  process.stdout.write(`${rows.length - wrong.length} of ${rows.length} as published\n`);
  if (options.json !== undefined) writeFileSync(options.json, `${JSON.stringify(rows, null, 2)}\n`);
  if (wrong.length > 0 || rows.length === 0) process.exitCode = 1;
} else {
  process.stdout.write('skipped: the benchmark data are not beside the project\n');
}
