/**
 * Sheets for the 43 furniture orders: what is found, what is proven, and how long
 * it takes. Run by `npm run bench:furniture`, with `-- --stages 2|3|free`, `--turn`
 * for pieces that may turn, `--root` for the linear bounds alone.
 *
 * Fails where a plan does not verify, where a bound is above the cost, where a plan
 * needs fewer sheets than a published optimum of free guillotine cuts, and where a
 * bound on those is above it.
 */
import { furnitureOrders } from './furniture-orders.js';
import { Report, readOptions, seconds, sum } from './harness.js';
import { judgedPlan } from './judged-plan.js';
import { rootBound } from './root-bound.js';

const KINDS = {
  2: { stages: 2, name: 'two-stage' },
  3: { stages: 3, name: 'three-stage' },
  free: { stages: 'free', name: 'free' },
};

const options = readOptions({
  stages: { type: 'string', default: '2' },
  turn: { type: 'boolean', default: false },
  root: { type: 'boolean', default: false },
});
const kind = KINDS[options.stages];
if (kind === undefined) throw new Error(`--stages takes 2, 3 or free; got ${options.stages}`);
const named = options.turn ? `${kind.name}, turned` : kind.name;
const orders = furnitureOrders(options.data, { stages: kind.stages, mayTurn: options.turn });
if (orders !== undefined) {
  const chosen = orders.filter(({ name }) => options.only(name));
  await (options.root ? rootBounds(chosen) : plans(chosen));
}

/** Every free guillotine plan that is published as the best is no worse than any plan of ours. */
function againstPublished({ name, published }, found, bound) {
  const faults = [];
  if (published === undefined) return faults;
  if (found < published)
    faults.push(`${name}: ${found} sheets, where ${published} are proven least`);
  if (kind.stages === 'free' && bound > published) {
    faults.push(`${name}: bound ${bound} above the published optimum ${published}`);
  }
  return faults;
}

async function plans(chosen) {
  const columns = [
    ['instance', (row) => row.instance],
    ['kind', (row) => row.kind, named.length],
    ['bound', (row) => String(row.bound ?? '-')],
    ['found', (row) => String(row.found ?? '-')],
    ['gap', (row) => String(row.gap ?? '-')],
    ['proven', (row) => (row.proven ? 'yes' : 'no')],
    ['published', (row) => String(row.published ?? '-')],
    ['columns', (row) => String(row.patterns ?? '-')],
    ['nodes', (row) => String(row.nodes ?? '-')],
    ['seconds', (row) => seconds(row.seconds), 8],
    ['cpu s', (row) => seconds(row.cpuSeconds), 8],
    ['ending', (row) => row.ending ?? row.status],
  ];
  const report = new Report('furniture', columns, options);
  await warmUp((problem) => judgedPlan(problem, { timeLimitSeconds: 1 }));
  for (const order of chosen) {
    const { row, faults } = await judgedPlan(order.problem, { timeLimitSeconds: options.seconds });
    const figures = { instance: order.name, kind: named, published: order.published, ...row };
    report.add(figures, [...faults, ...againstPublished(order, row.found, row.bound)]);
  }
  const { rows } = report;
  const withGap = (test) => rows.filter(({ gap }) => test(gap)).length;
  const open = rows.filter(({ published }) => published === undefined);
  const known = rows.filter(({ published }) => published !== undefined);
  const summary = {
    orders: rows.length,
    atTheBound: withGap((gap) => gap === 0),
    oneAbove: withGap((gap) => gap === 1),
    furtherAbove: withGap((gap) => gap === undefined || gap > 1),
    published: known.length,
    publishedReached: known.filter(({ published, found }) => published === found).length,
    publishedProven: known.filter(({ published, found, proven }) => published === found && proven)
      .length,
    open: open.length,
    openProven: open.filter(({ proven }) => proven).length,
    openWithinOne: open.filter(({ gap }) => gap <= 1).length,
    totalSeconds: sum(rows.map((row) => row.seconds)),
    totalCpuSeconds: sum(rows.map((row) => row.cpuSeconds)),
  };
  report.end(summary, [
    `${summary.orders} orders: ${summary.atTheBound} at the bound, ${summary.oneAbove} one above, ${summary.furtherAbove} further; ${seconds(summary.totalSeconds)} s, ${seconds(summary.totalCpuSeconds)} s of processor`,
    ...(kind.stages === 'free'
      ? [
          `${summary.published} with a published optimum: ${summary.publishedReached} reached, ${summary.publishedProven} of them proven; ${summary.open} without: ${summary.openProven} proven, ${summary.openWithinOne} within one sheet`,
        ]
      : []),
  ]);
}

async function rootBounds(chosen) {
  const columns = [
    ['instance', (row) => row.instance],
    ['kind', (row) => row.kind, named.length],
    ['bound', (row) => row.exact.toFixed(4), 9],
    ['rounded up', (row) => String(row.bound)],
    ['published', (row) => String(row.published ?? '-')],
    ['columns', (row) => String(row.patterns)],
    ['rounds', (row) => String(row.rounds)],
    ['finished', (row) => (row.finished ? 'yes' : 'no')],
    ['seconds', (row) => seconds(row.seconds), 8],
    ['cpu s', (row) => seconds(row.cpuSeconds), 8],
  ];
  const report = new Report('furniture root bounds', columns, options);
  await warmUp((problem) => rootBound(problem, 1));
  for (const order of chosen) {
    const row = await rootBound(order.problem, options.seconds);
    report.add(
      { instance: order.name, kind: named, published: order.published, ...row },
      againstPublished(order, undefined, row.bound),
    );
  }
  const { rows } = report;
  const summary = {
    orders: rows.length,
    finished: rows.filter(({ finished }) => finished).length,
    totalBound: sum(rows.map(({ bound }) => bound)),
    totalSeconds: sum(rows.map((row) => row.seconds)),
    totalCpuSeconds: sum(rows.map((row) => row.cpuSeconds)),
  };
  report.end(summary, [
    `${summary.orders} root bounds, ${summary.finished} finished, together ${summary.totalBound} sheets; ${seconds(summary.totalSeconds)} s, ${seconds(summary.totalCpuSeconds)} s of processor`,
  ]);
}

/** Loads the solvers and warms the code up on the order with the fewest pieces. */
async function warmUp(run) {
  const [smallest] = [...orders].sort((a, b) => a.problem.pieces.length - b.problem.pieces.length);
  await run(smallest.problem);
}
