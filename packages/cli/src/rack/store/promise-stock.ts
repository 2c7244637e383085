import type { PlannedCutting, PlannedStock } from '../rack.js';
import { RackError } from '../rack-error.js';
import { bookedTimes, type JobRow } from './jobs.js';
import type { Ledger } from './ledger.js';
import { nanometres } from './nanometres.js';
import type { StockRow } from './stock-rows.js';

/**
 * The row that a stock of a plan lies under, the same metal as when it was planned.
 * Undefined for metal that never was on the rack.
 * @throws RackError where it is gone or changed
 */
export function plannedRow(
  ledger: Ledger,
  stock: PlannedStock,
  smallestMark: number,
): StockRow | undefined {
  if (stock.mark === undefined) return undefined;
  const row = ledger.rowOf(stock.mark);
  if (row === undefined || row.count === 0) {
    throw new RackError('not enough', `${stock.mark} is not on the rack any more; plan again`);
  }
  if (!isSameMetal(row, stock, smallestMark)) {
    throw new RackError('changed', `${stock.mark} is not as it was when planned; plan again`);
  }
  return row;
}

/** A plan rounds what it cuts down to its smallest mark. */
export function isSameMetal(row: StockRow, stock: PlannedStock, smallestMark: number): boolean {
  const mark = nanometres(smallestMark, 'the smallest mark');
  const thickness = row.thickness ?? undefined;
  const planned =
    stock.thickness === undefined ? undefined : nanometres(stock.thickness, 'thickness');
  const isSide = (found: number, told: number) => {
    const over = found - nanometres(told, 'a side');
    return over >= -1 && over < mark;
  };
  return (
    row.kind === stock.kind &&
    isSide(row.length, stock.length) &&
    isSide(row.width, stock.width) &&
    row.metal === stock.metal &&
    thickness === planned &&
    (row.rolled ?? undefined) === stock.rolled
  );
}

/** How many of a stock a plan cuts in all, and how many it has cut. */
export function usesOf(
  ledger: Ledger,
  job: JobRow,
  { layouts }: PlannedCutting,
  stock: number,
): { readonly all: number; readonly cut: number } {
  const booked = bookedTimes(ledger, job);
  const sum = (counted: (index: number) => number) =>
    layouts.reduce(
      (total, layout, index) => total + (layout.stock === stock ? counted(index) : 0),
      0,
    );
  return {
    all: sum((index) => layouts[index]?.times ?? 0),
    cut: sum((index) => booked[index] ?? 0),
  };
}

/**
 * Promises to a job all that it still takes from the rack of one stock.
 * @throws RackError where it is gone, changed or promised to another
 */
export function promiseStock(
  ledger: Ledger,
  job: JobRow,
  cutting: PlannedCutting,
  index: number,
  booking?: number,
): void {
  const stock = cutting.stock[index];
  if (stock === undefined) return;
  const { all, cut } = usesOf(ledger, job, cutting, index);
  if (all === cut) return;
  const row = sourceRow(ledger, job, cutting, stock);
  if (row === undefined) return;
  // What lies beside the rack is cut first.
  const fromRack = all - Math.max(cut, stock.beside);
  const needed = job.received === 1 ? fromRack : Math.min(fromRack, stock.fromRack);
  const more = needed - ledger.promised(job.number, row.number);
  if (more <= 0) return;
  if (row.count - row.promised < more) {
    throw new RackError(
      'promised',
      `${row.mark} is promised to ${holdersOf(ledger, row, job)}; let that go, or plan again`,
    );
  }
  ledger.enter({
    stock: row.number,
    deed: 'promised',
    promisedChange: more,
    job: job.number,
    booking,
  });
}

/** The row that a job takes a stock from: that of its mark, or that which sheets bought for it lie under. */
export function sourceRow(
  ledger: Ledger,
  job: JobRow,
  cutting: PlannedCutting,
  stock: PlannedStock,
): StockRow | undefined {
  const planned = plannedRow(ledger, stock, cutting.smallestMark);
  if (planned !== undefined || stock.bought === 0 || job.received === 0) return planned;
  const number = ledger.sheetsOf(stock);
  return number === undefined ? undefined : ledger.row(number);
}

function holdersOf(ledger: Ledger, row: StockRow, job: JobRow): string {
  const names = ledger
    .prepare<[number, number], string>(
      `SELECT 'job ' || number || ' (' || name || ')' FROM promise JOIN job ON number = job
       WHERE stock = ? AND count > 0 AND job <> ? ORDER BY number`,
    )
    .pluck()
    .all(row.number, job.number);
  return names.length === 0 ? 'others in part' : names.join(', ');
}

/** Ends what is still promised to a job. */
export function endPromises(ledger: Ledger, job: number, booking?: number): number {
  const rows = ledger
    .prepare<[number], { readonly stock: number; readonly count: number }>(
      'SELECT stock, count FROM promise WHERE job = ? AND count > 0 ORDER BY stock',
    )
    .all(job);
  for (const { stock, count } of rows) {
    ledger.enter({ stock, deed: 'let go', promisedChange: -count, job, booking });
  }
  return rows.length;
}
