import type { RackDeed, RackEvent } from '../rack.js';
import type { Ledger } from './ledger.js';

interface EventRow {
  readonly number: number;
  readonly at: string;
  readonly deed: RackDeed;
  readonly change: number;
  readonly promised_change: number;
  readonly job: number | null;
  readonly booking: number | null;
  readonly note: string;
}

/** All that happened to one mark, oldest first. */
export function eventsOf(ledger: Ledger, mark: string): readonly RackEvent[] {
  const { number: stock } = ledger.rowMarked(mark);
  return ledger
    .prepare<[number], EventRow>('SELECT * FROM event WHERE stock = ? ORDER BY number')
    .all(stock)
    .map(({ number, at, deed, change, promised_change, job, booking, note }) => ({
      number,
      at,
      mark,
      deed,
      change,
      promisedChange: promised_change,
      ...(job === null ? {} : { job }),
      ...(booking === null ? {} : { booking }),
      note,
    }));
}
