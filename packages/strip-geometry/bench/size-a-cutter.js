/**
 * How long it takes to size a cutter: outline checked, seam placed, strip laid
 * out. One row for each family in the sizes of its example, and one for each
 * kind of long path. `cpu ms` is the time the processor spent on it, which other
 * work on the machine hardly changes, however long it had to wait. Run by
 * `npm run bench:strip`.
 */
import { cubic, ellipticalArc, families, line, makeStrip, neutralAxis } from '../dist/index.js';

const LONG = 5000;
const WARM_UP_MS = 300;
const MEASURED_MS = 1000;
const LEAST_RUNS = 15;

const work = {
  depth: 25,
  hem: 6,
  tab: 10,
  bendRule: neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 }),
};

/** A smooth wavy round, 200 mm across: 12 petals. */
function onWave(angle) {
  const radius = 100 + 6 * Math.cos(12 * angle);
  return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
}

function waveVelocity(angle) {
  const radius = 100 + 6 * Math.cos(12 * angle);
  const growth = -72 * Math.sin(12 * angle);
  return {
    x: growth * Math.cos(angle) - radius * Math.sin(angle),
    y: growth * Math.sin(angle) + radius * Math.cos(angle),
  };
}

/** A closed path of many segments, each drawn by its first and last angle. */
function round(draw) {
  const step = (2 * Math.PI) / LONG;
  return Array.from({ length: LONG }, (_, index) =>
    draw(index * step, ((index + 1) % LONG) * step, step),
  );
}

function cubicPiece(start, end, step) {
  const [from, to] = [onWave(start), onWave(end)];
  const [leave, arrive] = [waveVelocity(start), waveVelocity(end)];
  return cubic(
    from,
    { x: from.x + (leave.x * step) / 3, y: from.y + (leave.y * step) / 3 },
    { x: to.x - (arrive.x * step) / 3, y: to.y - (arrive.y * step) / 3 },
    to,
  );
}

function ellipsePiece(start, _end, step) {
  const ellipse = { centre: { x: 0, y: 0 }, radiusX: 100, radiusY: 70, rotation: 0.3 };
  return ellipticalArc({ ...ellipse, start, sweep: step });
}

const long = [
  ['cubic curves', round(cubicPiece), {}],
  ['elliptical arcs', round(ellipsePiece), {}],
  [
    'straight lines, smooth',
    round((start, end) => line(onWave(start), onWave(end))),
    { cornerAngle: 5 },
  ],
];

const cases = [
  ...families.map((family) => [family.name, family.draw(family.example), {}]),
  ...long.map(([name, segments, options]) => {
    const outline = { name, segments };
    return [`${segments.length} ${name}`, outline, options];
  }),
];

/** Runs `task` for about some time, at least `LEAST_RUNS` times, and returns how long each run took, milliseconds. */
function time(task, lasting) {
  const taken = [];
  const stop = performance.now() + lasting;
  do {
    const start = performance.now();
    task();
    taken.push(performance.now() - start);
  } while (performance.now() < stop || taken.length < LEAST_RUNS);
  return taken;
}

function median(numbers) {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

const rows = cases.map(([name, outline, options]) => {
  const size = () => makeStrip({ ...work, ...options, outline });
  time(size, WARM_UP_MS);
  const before = process.cpuUsage();
  const taken = time(size, MEASURED_MS);
  const { user, system } = process.cpuUsage(before);
  const cpu = (user + system) / 1000 / taken.length;
  const figures = [median(taken).toFixed(3), cpu.toFixed(3), String(taken.length)];
  return [name, ...figures, size().length.toFixed(6)];
});

const table = [['outline', 'median ms', 'cpu ms', 'runs', 'strip mm'], ...rows];
const widths = table[0].map((_, column) => Math.max(...table.map((row) => row[column].length)));
for (const row of table) {
  const cells = row.map((cell, column) =>
    column === 0 ? cell.padEnd(widths[column]) : cell.padStart(widths[column]),
  );
  process.stdout.write(`${cells.join('  ')}\n`);
}
