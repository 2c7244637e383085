/**
 * What the benchmarks have in common: their options, the data beside the project,
 * time as the wall and the processor see it, one table, one file of figures, and
 * an exit code that says whether anything was wrong.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const DATA = fileURLToPath(new URL('../../../../shared/benchmarks/', import.meta.url));

/**
 * Reads the options of the command: those that every benchmark takes, and more.
 * @param more further options, as `parseArgs` of Node describes them
 * @returns `seconds` a number, `only` undefined or a test of names
 */
export function readOptions(more = {}) {
  const options = {
    json: { type: 'string' },
    seconds: { type: 'string', default: '60' },
    only: { type: 'string' },
    data: { type: 'string', default: DATA },
    ...more,
  };
  const values = parsed({ ...options, help: { type: 'boolean' } });
  if (values.help) {
    process.stdout.write(`options: ${namesOf(options)}\nDEVELOPERS.md says what they do\n`);
    process.exit(0);
  }
  const seconds = Number(values.seconds);
  if (!(seconds >= 0)) refuse(`--seconds takes a number of seconds; got ${values.seconds}`);
  const names = values.only?.split(',').map((name) => name.trim());
  return { ...values, seconds, only: (name) => names === undefined || names.includes(name) };
}

function parsed(options) {
  try {
    return parseArgs({ options }).values;
  } catch (error) {
    return refuse(`${error.message}\nthere are: ${namesOf(options)}`);
  }
}

function namesOf(options) {
  return Object.keys(options)
    .map((name) => `--${name}`)
    .join(' ');
}

/** Says what is wrong with the command, and ends with 2. */
function refuse(what) {
  process.stderr.write(`${what}\n`);
  process.exit(2);
}

/** The rows of files of the data folder, or undefined (with a message) where one is absent. */
export function readData(folder, ...files) {
  const paths = files.map((file) => join(resolve(folder), file));
  const absent = paths.filter((path) => !existsSync(path));
  if (absent.length === 0) return paths.map(readCsv);
  process.stdout.write(`skipped: the benchmark data are not there (${absent.join(', ')})\n`);
  return undefined;
}

/** A file of commas, its first line the names of the columns, as one object a line. */
function readCsv(path) {
  const [heading, ...lines] = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  const names = heading.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((name, column) => [name, cells[column]]));
  });
}

/** Wall and processor seconds of a task; other work on the machine hardly changes the latter. */
export async function timed(task) {
  const before = process.cpuUsage();
  const start = performance.now();
  const result = await task();
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(before);
  return { result, seconds, cpuSeconds: (user + system) / 1e6 };
}

export function median(numbers) {
  const sorted = [...numbers].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

export function sum(numbers) {
  return numbers.reduce((total, number) => total + number, 0);
}

/** How many decimals say something about a time. */
export function seconds(number) {
  return number.toFixed(number < 10 ? 3 : 1);
}

/**
 * A table that is printed line by line as figures come in, so that a long run
 * shows how far it is, and a file that holds whatever is known so far.
 */
export class Report {
  /** What was measured, one object a line of the table. */
  rows = [];
  /** Whatever was wrong. */
  faults = [];
  #name;
  #columns;
  #options;

  /**
   * @param name of the benchmark
   * @param columns each `[heading, cell]` or `[heading, cell, width]`: how a row is printed there
   * @param options as read by `readOptions`
   */
  constructor(name, columns, options) {
    this.#name = name;
    this.#columns = columns.map(([heading, cell, width = 0]) => ({
      heading,
      cell,
      width: Math.max(heading.length, width),
    }));
    this.#options = options;
    this.#print(this.#columns.map(({ heading }) => heading));
  }

  /** @param faults what is wrong with the row; it is printed, and the benchmark fails */
  add(row, faults = []) {
    this.rows.push({ ...row, ...(faults.length > 0 ? { faults } : {}) });
    this.show(row);
    for (const fault of faults) this.fault(fault);
    this.#write();
  }

  /** Prints a line that is no measurement of its own. */
  show(row) {
    this.#print(this.#columns.map(({ cell }) => cell(row)));
  }

  fault(message) {
    this.faults.push(message);
    process.stdout.write(`  FAULT: ${message}\n`);
  }

  /**
   * Ends the table with a few lines and sets the exit code.
   * @param summary figures of the whole, for the file
   */
  end(summary, lines) {
    if (this.rows.length === 0) this.fault('nothing was measured');
    for (const line of lines) process.stdout.write(`${line}\n`);
    if (this.faults.length > 0) {
      process.stdout.write(`${this.faults.length} at fault\n`);
      process.exitCode = 1;
    }
    this.#write(summary);
  }

  #print(cells) {
    const line = cells.map((cell, column) => {
      const { width } = this.#columns[column];
      return column === 0 ? cell.padEnd(width) : cell.padStart(width);
    });
    process.stdout.write(`${line.join('  ')}\n`);
  }

  #write(summary) {
    const { json, seconds: limit } = this.#options;
    if (json === undefined) return;
    const { rows, faults } = this;
    const figures = { benchmark: this.#name, seconds: limit, node: process.version, summary };
    writeFileSync(json, `${JSON.stringify({ ...figures, faults, rows }, null, 2)}\n`);
  }
}
