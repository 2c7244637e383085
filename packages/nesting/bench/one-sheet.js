/**
 * The most area that free guillotine cuts get out of one sheet, against published
 * optima: J.E. Beasley, "Algorithms for unconstrained two-dimensional guillotine
 * cutting", JORS 36 (1985) 297-306, instances gcut1-12 of the OR-Library; optima by
 * G. Cintra and Y. Wakabayashi, fixed and turned. Run by `npm run bench:one-sheet`,
 * which prices one sheet to the end, whatever `--seconds` says. Fails where one differs.
 */
import { boxRaster } from '../dist/box-solver/raster-points.js';
import { FreePricer } from '../dist/free-guillotine/free-pricer.js';
import { Report, readData, readOptions, seconds, sum, timed } from './harness.js';

const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };

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

async function solve(instance, items, mayTurn, published) {
  const box = boxOf(items, mayTurn);
  const areas = items.map(({ item_length, item_width }) => item_length * item_width);
  const { result, ...time } = await timed(() => {
    const priced = new FreePricer([box], limits).price(areas, 0);
    return { bound: priced.worth[0], counts: priced.patterns(0)[0]?.pattern.counts ?? [] };
  });
  const { xs, ys } = boxRaster(box, limits);
  return {
    instance,
    turned: mayTurn,
    published,
    bound: result.bound,
    found: sum(result.counts.map(([piece, copies]) => copies * areas[piece])),
    points: [xs.at.length, ys.at.length],
    ...time,
  };
}

const options = readOptions();
const data = readData(options.data, 'gcut.csv', 'gcut-free-guillotine-knapsack-optima.csv');
if (data !== undefined) {
  const [lines, optima] = data;
  const columns = [
    ['instance', (row) => row.instance],
    ['turned', (row) => (row.turned ? 'yes' : 'no')],
    ['published', (row) => String(row.published)],
    ['bound', (row) => String(row.bound), 9],
    ['found', (row) => String(row.found), 9],
    ['points', (row) => row.points.join(' x '), 9],
    ['seconds', (row) => seconds(row.seconds), 8],
    ['cpu s', (row) => seconds(row.cpuSeconds), 8],
  ];
  const report = new Report('one sheet', columns, options);
  const chosen = optima.filter(({ instance }) => options.only(instance));
  for (const { instance, fixed_orientation_optimum, rotation_allowed_optimum } of chosen) {
    const items = lines.filter((line) => line.instance === instance);
    for (const mayTurn of [false, true]) {
      const published = Number(mayTurn ? rotation_allowed_optimum : fixed_orientation_optimum);
      const row = await solve(instance, items, mayTurn, published);
      const same = row.found === published && row.bound === published;
      report.add(row, same ? [] : [`${instance} differs from the published ${published}`]);
    }
  }
  const { rows, faults } = report;
  const summary = {
    asPublished: rows.length - faults.length,
    totalSeconds: sum(rows.map((row) => row.seconds)),
    totalCpuSeconds: sum(rows.map((row) => row.cpuSeconds)),
  };
  report.end(summary, [
    `${summary.asPublished} of ${rows.length} as published; ${seconds(summary.totalSeconds)} s, ${seconds(summary.totalCpuSeconds)} s of processor`,
  ]);
}
