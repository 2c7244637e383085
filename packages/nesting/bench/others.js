/**
 * The planner against what else one would use: first fit decreasing, an explicit
 * model given to HiGHS (small orders only), and a packer of rectangles made for
 * pictures, whose packings a shear often cannot cut. Cost, sheets and time as
 * ratios to the planner's, with the median over seeded orders: small ones (M) and
 * those of a shop (S). Run by `npm run bench:others`.
 *
 * Fails where a plan or a packing does not hold, where the planner costs more than
 * first fit, and where its bound or its proof disagrees with the explicit model.
 */
import { median, Report, readOptions, seconds, timed } from './harness.js';
import { explicitModel } from './rivals/explicit-model.js';
import { picturePacker } from './rivals/picture-packer.js';
import { firstFit, planner } from './rivals/planner.js';
import { shopOrder, smallOrder } from './shop-orders.js';

/** The planner first: the others are set against it. */
const METHODS = [planner, firstFit, explicitModel, picturePacker];
const SMALL = 9;
const SHOP = 7;
/** A method that takes next to no time is run again, and the median time counts. */
const MOST_RUNS = 7;
const ENOUGH_SECONDS = 0.5;

const orders = [
  ...Array.from({ length: SMALL }, (_, index) => ({
    name: `M${index + 1}`,
    group: 'small',
    problem: smallOrder({ seed: index + 1, types: 3 + (index >> 1) }),
  })),
  ...Array.from({ length: SHOP }, (_, index) => ({
    name: `S${index + 1}`,
    group: 'shop',
    problem: shopOrder({
      seed: index + 1,
      widths: 3 + (index % 3),
      types: 24,
      quantities: [5, 200],
    }),
  })),
];

const options = readOptions();
const ratio = (number) => (Number.isFinite(number) ? number.toFixed(number < 100 ? 3 : 0) : '-');
const columns = [
  ['order', (row) => row.order, 15],
  ['method', (row) => row.method, 14],
  ['guillotine', (row) => (row.guillotine ? 'yes' : 'no')],
  ['proven', (row) => (row.proven === undefined ? '-' : row.proven ? 'yes' : 'no')],
  ['cost', (row) => String(row.cost ?? '-'), 6],
  ['sheets', (row) => String(row.sheets ?? '-')],
  ['seconds', (row) => seconds(row.seconds), 8],
  ['cpu s', (row) => seconds(row.cpuSeconds), 8],
  ['cost ratio', (row) => ratio(row.costRatio)],
  ['sheet ratio', (row) => ratio(row.sheetRatio)],
  ['time ratio', (row) => ratio(row.timeRatio)],
];

const report = new Report('others', columns, options);
for (const method of METHODS) await method.solve(smallOrder({ seed: 1, types: 3 }), 1);
for (const { name, group, problem } of orders.filter((order) => options.only(order.name))) {
  let ours;
  for (const method of METHODS.filter(({ suits }) => suits(problem))) {
    const { result, ...time } = await often(() => method.solve(problem, options.seconds));
    const { faults, ...judged } = method.judge(problem, result);
    ours ??= { ...judged, ...time };
    const row = {
      order: name,
      group,
      method: method.name,
      guillotine: method.guillotine,
      ...judged,
      ...time,
      costRatio: judged.cost / ours.cost,
      sheetRatio: judged.sheets / ours.sheets,
      timeRatio: time.cpuSeconds / ours.cpuSeconds,
    };
    report.add(
      row,
      [...faults, ...disagreements(ours, row)].map((fault) => `${name}: ${fault}`),
    );
  }
}
const medians = mediansOf(report.rows);
for (const row of medians) report.show(row);
report.end({ medians }, [
  'Ratios: the others by the planner; times of the processor. The picture packer makes no guillotine',
  'cuts, so that a shear may not be able to cut what it packs.',
]);

/** Runs a task again while it is quick: the last result, and the median times. */
async function often(task) {
  const runs = [];
  let spent = 0;
  do {
    const run = await timed(task);
    runs.push(run);
    spent += run.seconds;
  } while (runs.length < MOST_RUNS && spent < ENOUGH_SECONDS);
  return {
    result: runs[0].result,
    runs: runs.length,
    seconds: median(runs.map((run) => run.seconds)),
    cpuSeconds: median(runs.map((run) => run.cpuSeconds)),
  };
}

/** Methods that make the same kind of plan cannot contradict each other. */
function disagreements(ours, { method, cost, proven }) {
  if (cost === undefined || method === picturePacker.name) return [];
  const faults = [];
  if (cost < ours.bound) faults.push(`${method} costs ${cost}, below the bound ${ours.bound}`);
  if (method === firstFit.name && ours.cost > cost) faults.push(`first fit is cheaper: ${cost}`);
  if (method === explicitModel.name && proven && ours.cost < cost) {
    faults.push(`the explicit model proves ${cost}, the planner has ${ours.cost}`);
  }
  return faults;
}

function mediansOf(rows) {
  const groups = [...new Set(rows.map(({ group }) => group))];
  return groups.flatMap((group) =>
    METHODS.flatMap(({ name, guillotine }) => {
      const own = rows.filter((row) => row.group === group && row.method === name);
      const solved = own.filter(({ cost }) => cost !== undefined);
      if (solved.length === 0) return [];
      const middle = (of) => median(solved.map(of));
      return [
        {
          order: `${group}, median ${solved.length}/${own.length}`,
          method: name,
          guillotine,
          cost: middle(({ cost }) => cost),
          sheets: middle(({ sheets }) => sheets),
          seconds: middle((row) => row.seconds),
          cpuSeconds: middle(({ cpuSeconds }) => cpuSeconds),
          costRatio: middle(({ costRatio }) => costRatio),
          sheetRatio: middle(({ sheetRatio }) => sheetRatio),
          timeRatio: middle(({ timeRatio }) => timeRatio),
        },
      ];
    }),
  );
}
