/**
 * A year of invented orders, planned and booked by the command itself: with the rack,
 * without one (all that is left over is scrap), and as is often done by hand, with
 * what came to the rack last. Prints one table, and writes a chart. Run by
 * `npm run bench:rack`. Fails where a whole year with the rack costs more than one
 * without, or where the rack has not stopped growing.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { planCutting, verifyPlan } from '@stripwright/nesting';
import { main, nodeEnvironment } from '../dist/index.js';
import { sqliteRacks } from '../dist/rack/sqlite-racks.js';
import { yearChart } from './year-chart.js';
import { faultsOf } from './year-faults.js';
import { yearOrders } from './year-orders.js';

const { values: options } = parseArgs({
  options: {
    orders: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    seconds: { type: 'string', default: '2' },
    chart: { type: 'string' },
    json: { type: 'string' },
  },
});
/** How many offcuts one looks at who takes what came last. */
const NEWEST = 3;
const GRAMS_OF_A_SQUARE_MILLIMETRE = 0.28 * 7.85e-3;

const orders = yearOrders(Number(options.seed), Number(options.orders));
const dayOf = (order) =>
  new Date(Date.UTC(2026, 0, 5) + (order * 365 * 86_400_000) / orders.length);

const environment = nodeEnvironment();

const habits = [
  { name: 'with the rack', rack: 'all' },
  { name: 'newest first', rack: 'newest' },
  { name: 'without', rack: 'none' },
];

const folder = mkdtempSync(join(tmpdir(), 'rack-year-'));
try {
  const years = [];
  for (const [index, habit] of habits.entries()) years.push(await liveYear(habit, index));
  printTable(years);
  if (options.json !== undefined)
    writeFileSync(options.json, `${JSON.stringify(years, null, 2)}\n`);
  if (options.chart !== undefined) writeFileSync(options.chart, yearChart(years));
  const faults = faultsOf(years);
  for (const fault of faults) process.stderr.write(`${fault}\n`);
  process.exitCode = faults.length > 0 ? 1 : 0;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function liveYear({ name, rack: kind }, index) {
  const path = join(folder, `${index}.sqlite`);
  const sum = { sheets: 0, money: 0, bought: 0, used: 0, proven: 0 };
  const steps = [];
  for (const [number, text] of orders.entries()) {
    const order = join(folder, 'order.yaml');
    writeFileSync(order, text);
    const packet = join(folder, `packet-${index}-${number}`);
    const racks = racksOf(kind, () => dayOf(number).toISOString());
    const rack = kind === 'none' ? ['--no-rack'] : ['--rack', path];
    await run(
      ['plan', order, '--out', packet, '--quiet', '--time-limit', options.seconds, ...rack],
      racks,
    );
    const plan = JSON.parse(readFileSync(join(packet, 'plan.json'), 'utf8'));
    if (kind !== 'none') await run(['book', join(packet, 'plan.json'), '--rack', path], racks);
    rmSync(packet, { recursive: true });
    addPlan(sum, plan);
    steps.push({ ...sum, ...onRack(kind, path) });
    if (process.stderr.isTTY) process.stderr.write(`\r${name}: ${number + 1} of ${orders.length} `);
  }
  if (process.stderr.isTTY) process.stderr.write('\r\u001b[K');
  return { name, steps };
}

async function run(argv, racks) {
  const told = [];
  const into = { isTerminal: false, write: (text) => told.push(text) };
  const exitCode = await main(argv, {
    ...environment,
    stdout: into,
    stderr: into,
    racks,
    planner: { planCutting, verifyPlan },
  });
  if (exitCode !== 0) throw new Error(`${argv.join(' ')}: exit code ${exitCode}: ${told.join('')}`);
}

function racksOf(kind, now) {
  const racks = sqliteRacks({ now, newId: () => 'a year' });
  if (kind !== 'newest') return racks;
  // Only what came last is seen; all else is as it is.
  const seeing = (rack) =>
    new Proxy(rack, {
      get(target, name) {
        if (name === 'list') return (filter) => target.list(filter).slice(-NEWEST);
        const value = Reflect.get(target, name, target);
        return typeof value === 'function' ? value.bind(target) : value;
      },
    });
  return {
    open: (path) => seeing(racks.open(path)),
    openIfThere: (path) => {
      const rack = racks.openIfThere(path);
      return rack && seeing(rack);
    },
  };
}

function addPlan(sum, { buy, stock, layouts, bound }) {
  if (bound.proven) sum.proven++;
  for (const { stock: id, count, cost } of buy) {
    const sheet = stock.find((each) => each.id === id);
    sum.sheets += count;
    sum.money += cost;
    sum.bought += count * sheet.length * sheet.width;
  }
  for (const { count, pieces } of layouts) {
    for (const { length, width } of pieces) sum.used += count * length * width;
  }
}

function onRack(kind, path) {
  if (kind === 'none') return { offcuts: 0, area: 0, value: 0 };
  const rack = sqliteRacks({ now: () => '', newId: () => '' }).open(path);
  const { offcuts, offcutArea, value } = rack.worth();
  rack.close();
  return { offcuts, area: offcutArea, value };
}

function printTable(years) {
  const rows = years.map(({ name, steps }) => {
    const end = steps.at(-1);
    // What was bought and is neither in cutters nor on the rack.
    const scrap = (end.bought - end.used - end.area) * GRAMS_OF_A_SQUARE_MILLIMETRE;
    const at = (share) => String(steps[Math.ceil(steps.length * share) - 1].offcuts);
    return [
      name,
      String(end.sheets),
      end.money.toFixed(2),
      (scrap / 1000).toFixed(2),
      `${((100 * scrap) / GRAMS_OF_A_SQUARE_MILLIMETRE / end.bought).toFixed(1)}`,
      [0.25, 0.5, 0.75, 1].map(at).join(' '),
      String(Math.max(...steps.map(({ offcuts }) => offcuts))),
      (end.value / 100).toFixed(2),
      String(end.proven),
    ];
  });
  const heads = [
    'habit',
    'sheets',
    'money',
    'scrap kg',
    'scrap %',
    'offcuts by quarter',
    'most',
    'worth',
    'proven',
  ];
  const widths = heads.map((head, column) =>
    Math.max(head.length, ...rows.map((row) => row[column].length)),
  );
  const lineOf = (cells) =>
    cells
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0]) : cell.padStart(widths[column]),
      )
      .join('  ');
  process.stdout.write(`${[heads, ...rows].map(lineOf).join('\n')}\n`);
}
