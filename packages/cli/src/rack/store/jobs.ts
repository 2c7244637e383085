import type { PlannedCutting, RackJob } from '../rack.js';
import { RackError } from '../rack-error.js';
import type { Ledger } from './ledger.js';

/** A row of the table of jobs. */
export interface JobRow {
  readonly number: number;
  readonly plan: string;
  readonly name: string;
  readonly since: string;
  readonly layouts: string;
  readonly received: 0 | 1;
  readonly let_go: 0 | 1;
  readonly times_let_go: number;
}

export function jobOf(ledger: Ledger, plan: string): JobRow | undefined {
  return ledger.prepare<[string], JobRow>('SELECT * FROM job WHERE plan = ?').get(plan);
}

export function jobNumbered(ledger: Ledger, number: number): JobRow {
  const row = ledger.prepare<[number], JobRow>('SELECT * FROM job WHERE number = ?').get(number);
  if (row === undefined) throw new Error(`The rack has no job ${number}.`);
  return row;
}

/** The job of a plan, a new one where the plan is met for the first time. */
export function openJob(ledger: Ledger, { plan, name, layouts }: PlannedCutting): JobRow {
  const known = jobOf(ledger, plan);
  if (known !== undefined) {
    if (known.let_go === 1) {
      ledger.prepare('UPDATE job SET let_go = 0 WHERE number = ?').run(known.number);
    }
    return { ...known, let_go: 0 };
  }
  const times = JSON.stringify(layouts.map((layout) => layout.times));
  const { lastInsertRowid } = ledger
    .prepare('INSERT INTO job (plan, name, since, layouts) VALUES (?, ?, ?, ?)')
    .run(plan, name, ledger.now(), times);
  return jobNumbered(ledger, Number(lastInsertRowid));
}

/** How often each layout of a job was cut, in bookings that stand. */
export function bookedTimes(ledger: Ledger, job: JobRow): readonly number[] {
  const booked = wantedTimes(job).map(() => 0);
  const rows = ledger
    .prepare<[number], { readonly layout: number; readonly times: number }>(
      `SELECT layout, sum(times) AS times FROM booked_layout JOIN booking ON number = booking
       WHERE job = ? AND undone_at IS NULL GROUP BY layout`,
    )
    .all(job.number);
  for (const { layout, times } of rows) booked[layout] = times;
  return booked;
}

/** How often each layout of a job is to be cut. */
export function wantedTimes({ layouts }: JobRow): readonly number[] {
  return JSON.parse(layouts) as readonly number[];
}

export function toJob(ledger: Ledger, number: number): RackJob {
  const row = jobNumbered(ledger, number);
  const booked = bookedTimes(ledger, row);
  const layouts = wantedTimes(row).map((times, index) => ({ times, booked: booked[index] ?? 0 }));
  return {
    number: row.number,
    name: row.name,
    plan: row.plan,
    since: row.since,
    layouts,
    state: stateOf(row, layouts),
  };
}

function stateOf({ let_go }: JobRow, layouts: RackJob['layouts']): RackJob['state'] {
  if (layouts.every(({ times, booked }) => booked === times)) return 'booked';
  if (let_go === 1) return 'let go';
  return layouts.some(({ booked }) => booked > 0) ? 'partly booked' : 'held';
}

/** Notes that nothing is promised to a job any more. */
export function markLetGo(ledger: Ledger, number: number): void {
  ledger
    .prepare('UPDATE job SET let_go = 1, times_let_go = times_let_go + 1 WHERE number = ?')
    .run(number);
}

/** @throws RackError for a plan that was made from another rack */
export function refuseOtherRack(ledger: Ledger, { rackId }: PlannedCutting): void {
  if (rackId === undefined) return;
  const own = ledger.prepare<[], string>('SELECT id FROM rack').pluck().get();
  if (rackId === own) return;
  throw new RackError(
    'another rack',
    'the plan was made from another rack; name that rack with --rack, or plan again',
  );
}

/** Newest first. */
export function allJobs(ledger: Ledger): readonly RackJob[] {
  return ledger
    .prepare<[], number>('SELECT number FROM job ORDER BY number DESC')
    .pluck()
    .all()
    .map((number) => toJob(ledger, number));
}
