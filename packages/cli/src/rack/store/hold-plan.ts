import type { PlannedCutting, RackJob } from '../rack.js';
import { RackError } from '../rack-error.js';
import { type JobRow, jobOf, markLetGo, openJob, refuseOtherRack, toJob } from './jobs.js';
import type { Ledger } from './ledger.js';
import { endPromises, isSameMetal, promiseStock } from './promise-stock.js';

/** Promises to a plan what it takes from the rack, as far as it is not cut. */
export function holdPlan(ledger: Ledger, cutting: PlannedCutting): RackJob {
  refuseOtherRack(ledger, cutting);
  const job = openJob(ledger, cutting);
  refuseBooked(ledger, job);
  for (const index of cutting.stock.keys()) promiseStock(ledger, job, cutting, index);
  return toJob(ledger, job.number);
}

/** Ends the promise to a plan. */
export function letPlanGo(ledger: Ledger, plan: string): RackJob {
  const job = jobOf(ledger, plan);
  if (job === undefined) {
    throw new RackError('not held', 'the plan is not held; nothing is promised to it');
  }
  refuseBooked(ledger, job);
  if (job.let_go === 1) {
    throw new RackError('let go already', `job ${job.number} (${job.name}) was let go before`);
  }
  endPromises(ledger, job.number);
  markLetGo(ledger, job.number);
  return toJob(ledger, job.number);
}

/** The sheets that a plan buys come to the rack, and are promised to it as far as it cuts them. */
export function receivePlan(ledger: Ledger, cutting: PlannedCutting): RackJob {
  refuseOtherRack(ledger, cutting);
  const job = openJob(ledger, cutting);
  refuseBooked(ledger, job);
  if (job.received === 1) {
    throw new RackError(
      'booked already',
      `the sheets of job ${job.number} (${job.name}) came to the rack before`,
    );
  }
  const received = receiveSheets(ledger, job, cutting);
  for (const index of cutting.stock.keys()) promiseStock(ledger, received, cutting, index);
  return toJob(ledger, job.number);
}

/** Puts on the rack what a plan buys: with the sheets of that size that the plan found there, if it did. */
export function receiveSheets(
  ledger: Ledger,
  job: JobRow,
  { stock, smallestMark }: PlannedCutting,
  booking?: number,
): JobRow {
  for (const each of stock) {
    const { id, bought, price, mark, fromRack, beside, ...size } = each;
    if (bought === 0) continue;
    const entry = { deed: 'bought', job: job.number, booking } as const;
    const there = mark === undefined ? undefined : ledger.rowMarked(mark);
    if (there !== undefined && isSameMetal(there, each, smallestMark)) {
      // By its marks the plan may know the size less exactly than the rack does.
      ledger.enter({ ...entry, stock: there.number, change: bought });
      continue;
    }
    ledger.put(
      {
        ...size,
        kind: 'sheets',
        name: id,
        count: bought,
        place: '',
        origin: `bought for job ${job.number}: ${job.name}`,
        ...(price === undefined ? {} : { bookValue: price }),
      },
      entry,
    );
  }
  ledger.prepare('UPDATE job SET received = 1 WHERE number = ?').run(job.number);
  return { ...job, received: 1 };
}

/** @throws RackError for a plan that is cut already */
export function refuseBooked(ledger: Ledger, { number }: JobRow): void {
  const { state, name } = toJob(ledger, number);
  if (state !== 'booked') return;
  throw new RackError(
    'booked already',
    `the plan is booked already, as job ${number} (${name}); for another such order, plan ` +
      'again from the rack as it is now',
  );
}
