/**
 * Invented orders of a shop: how many are proven best within 2, 5 and 20 seconds
 * (S; F with few of each piece, E with fewer; K with a rule for keeping offcuts, V with
 * that and few of each piece), then how time and memory grow with the types of pieces
 * (T; R with a rule for keeping offcuts, L for a saw that can hold nothing narrow) and with
 * quantities (Q), which must hardly matter. Run by `npm run bench:shop`.
 * Fails where a plan does not verify or a bound is above the cost.
 */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { median, Report, readOptions, seconds, sum } from './harness.js';
import { shopOrder } from './shop-orders.js';

const LIMITS = [2, 5, 20];
const ORDERS = 10;
const TYPES = [10, 25, 50, 100, 200, 400];
const QUANTITIES = [10, 100, 1_000, 10_000];

const order = (index) => ({
  seed: index + 1,
  widths: 3 + (index % 3),
  types: 24,
  quantities: [5, 200],
});
const numbers = Array.from({ length: ORDERS }, (_, index) => index);
const kinds = [
  { letter: 'S', kind: 'shop' },
  { letter: 'F', kind: 'shop, few', quantities: [5, 15] },
  { letter: 'E', kind: 'shop, fewer', quantities: [3, 9] },
  { letter: 'K', kind: 'shop, keeping', keep: true },
  { letter: 'V', kind: 'few, keeping', quantities: [5, 15], keep: true },
];
const shop = kinds.flatMap(({ letter, kind, ...own }) =>
  numbers.map((index) => ({
    name: `${letter}${index + 1}`,
    kind,
    order: { ...order(index), ...own },
  })),
);
const typesOf = (letter, kind, own) =>
  TYPES.map((types) => ({
    name: `${letter}${types}`,
    kind,
    order: { seed: 1, widths: 4, types, quantities: [5, 50], ...own },
  }));
const growth = [
  ...typesOf('T', 'types', {}),
  ...typesOf('R', 'types, keeping', { keep: true }),
  ...typesOf('L', 'types, sawn', { saw: true }),
  ...QUANTITIES.map((most) => ({
    name: `Q${most}`,
    kind: 'quantities',
    order: { seed: 1, widths: 4, types: 24, quantities: [most / 2, (most * 3) / 2] },
  })),
];

const options = readOptions();
const percent = (number) => (number === undefined ? '-' : (100 * number).toFixed(2));
const times = (number) => (Number.isFinite(number) ? `${number.toFixed(1)} times` : '- times');
const time = (number) => (number === undefined ? '-' : seconds(number));
const columns = [
  ['order', (row) => row.name, 6],
  ['kind', (row) => row.kind, 14],
  ['types', (row) => String(row.types)],
  ['pieces', (row) => String(row.pieces)],
  ['limit s', (row) => String(row.limit)],
  ['bound', (row) => String(row.bound ?? '-'), 8],
  ['found', (row) => String(row.found ?? '-'), 8],
  ['gap %', (row) => percent(row.relativeGap)],
  ['proven', (row) => (row.proven ? 'yes' : 'no')],
  ['columns', (row) => String(row.patterns ?? '-')],
  ['bound cpu s', (row) => time(row.boundAfter)],
  ['1 % cpu s', (row) => time(row.nearAfter)],
  ['seconds', (row) => seconds(row.seconds), 8],
  ['cpu s', (row) => seconds(row.cpuSeconds), 8],
  ['peak MB', (row) => row.peakMegabytes?.toFixed(0) ?? '-'],
];

const report = new Report('shop', columns, options);
const short = LIMITS.filter((limit) => limit <= options.seconds);
await measure(shop, short.length > 0 ? short : [options.seconds]);
await measure(growth, [options.seconds]);
const summary = summaryOf(report.rows);
report.end(summary, linesOf(summary));

/** Plans each order with the shortest limit, then with longer ones until it is proven best. */
async function measure(entries, limits) {
  for (const entry of entries.filter(({ name }) => options.only(name))) {
    const problem = shopOrder(entry.order);
    const { row, faults } = await inOwnProcess(problem, limits);
    add(entry, problem, row, faults);
  }
}

/**
 * A process of its own, so that the memory is that of this order alone. This one plans
 * nothing, since a process starts with the peak of the one that started it.
 */
async function inOwnProcess(problem, limits) {
  const child = fork(new URL('./plan-order.js', import.meta.url));
  child.send({ problem, limits });
  const ended = once(child, 'exit').then(([code, signal]) => {
    const status = `the process ended (${signal ?? code})`;
    return { row: { limit: limits[0], seconds: 0, cpuSeconds: 0, status }, faults: [status] };
  });
  const answer = await Promise.race([once(child, 'message').then(([told]) => told), ended]);
  await ended;
  return answer;
}

function add({ name, kind, order }, { pieces }, row, faults) {
  const figures = {
    name,
    kind,
    seed: order.seed,
    types: order.types,
    pieces: sum(pieces.map(({ quantity }) => quantity)),
    ...row,
    ...(row.found === undefined ? {} : { relativeGap: row.gap / Math.max(1, row.found) }),
  };
  report.add(
    figures,
    faults.map((fault) => `${name}: ${fault}`),
  );
}

function summaryOf(rows) {
  const shops = kinds.flatMap(({ kind }) => {
    const own = rows.filter((row) => row.kind === kind);
    if (own.length === 0) return [];
    const gaps = own.filter(({ proven }) => !proven).map(({ relativeGap }) => relativeGap);
    const within = Object.fromEntries(
      LIMITS.map((limit) => [limit, own.filter((row) => row.proven && row.limit <= limit).length]),
    );
    return [{ kind, orders: own.length, provenWithin: within, gaps }];
  });
  const growths = ['types', 'quantities'].flatMap((kind) => {
    const own = rows.filter((row) => row.kind === kind);
    if (own.length < 2) return [];
    const [first, last] = [own[0], own[own.length - 1]];
    return [
      {
        kind,
        from: first.name,
        to: last.name,
        boundTime: last.boundAfter / first.boundAfter,
        time: last.cpuSeconds / first.cpuSeconds,
        memory: last.peakMegabytes / first.peakMegabytes,
      },
    ];
  });
  return { kinds: shops, growths };
}

function linesOf({ kinds, growths }) {
  return [
    ...kinds.map(({ kind, orders, provenWithin, gaps }) => {
      const proven = LIMITS.map((limit) => `${provenWithin[limit]} within ${limit} s`).join(', ');
      const rest =
        gaps.length === 0
          ? 'no gap left'
          : `gaps of the rest ${percent(median(gaps))} % (median) to ${percent(Math.max(...gaps))} %`;
      return `${kind}: of ${orders} proven best ${proven}; ${rest}`;
    }),
    ...growths.map(
      ({ kind, from, to, boundTime, time, memory }) =>
        `${kind}, ${from} to ${to}: first bound after ${times(boundTime)} the time, all of it ${times(time)}, memory ${times(memory)}`,
    ),
  ];
}
