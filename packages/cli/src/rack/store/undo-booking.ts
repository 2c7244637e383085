import type { RackDeed, RackJob } from '../rack.js';
import { RackError } from '../rack-error.js';
import { jobNumbered, markLetGo, toJob } from './jobs.js';
import type { Ledger } from './ledger.js';

interface EventRow {
  readonly stock: number;
  readonly deed: RackDeed;
  readonly change: number;
  readonly promised_change: number;
}

interface BookingRow {
  readonly number: number;
  readonly job: number;
  readonly opened: 0 | 1;
  readonly times_let_go: number;
}

/** Takes back the last booking that stands, entry by entry. */
export function undoBooking(ledger: Ledger): {
  readonly booking: number;
  readonly job: RackJob;
  readonly gone: readonly string[];
} {
  const last = ledger
    .prepare<[], BookingRow>(
      'SELECT * FROM booking WHERE undone_at IS NULL ORDER BY number DESC LIMIT 1',
    )
    .get();
  if (last === undefined) {
    throw new RackError('nothing to undo', 'no booking stands that could be undone');
  }
  const events = ledger
    .prepare<[number], EventRow>(
      'SELECT stock, deed, change, promised_change FROM event WHERE booking = ? ORDER BY number',
    )
    .all(last.number);
  const job = jobNumbered(ledger, last.job);
  const isLetGo = job.times_let_go > last.times_let_go;
  if (isLetGo && job.let_go === 0) {
    throw new RackError(
      'cannot be undone',
      `booking ${last.number} cannot be undone: its plan was let go and held again since; ` +
        'let it go first',
    );
  }
  const gone: string[] = [];
  // One sum for each stock, so that nothing passes through a count that never was.
  for (const stock of new Set(events.map((event) => event.stock))) {
    const own = events.filter((event) => event.stock === stock);
    const change = -own.reduce((sum, event) => sum + event.change, 0);
    // What was let go since stays free.
    const promisedChange = isLetGo
      ? 0
      : -own.reduce((sum, event) => sum + event.promised_change, 0);
    if (own.some(({ deed }) => deed === 'kept')) gone.push(ledger.row(stock).mark);
    refuseMissing(ledger, stock, change, promisedChange, last.number);
    ledger.enter({
      stock,
      deed: 'undone',
      change,
      promisedChange,
      job: last.job,
      booking: last.number,
    });
  }
  if (events.some(({ deed }) => deed === 'bought')) {
    ledger.prepare('UPDATE job SET received = 0 WHERE number = ?').run(last.job);
  }
  if (last.opened === 1 && !isLetGo) markLetGo(ledger, last.job);
  ledger
    .prepare('UPDATE booking SET undone_at = ? WHERE number = ?')
    .run(ledger.now(), last.number);
  return { booking: last.number, job: toJob(ledger, last.job), gone };
}

function refuseMissing(
  ledger: Ledger,
  stock: number,
  change: number,
  promisedChange: number,
  booking: number,
): void {
  const { mark, count, promised } = ledger.row(stock);
  const [left, bound] = [count + change, promised + promisedChange];
  if (left >= 0 && bound >= 0 && bound <= left) return;
  throw new RackError(
    'cannot be undone',
    `booking ${booking} cannot be undone: ${mark} has been removed or promised since; ` +
      'put it back or let it go first',
  );
}
