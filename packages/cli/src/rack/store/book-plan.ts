import { sheetWeight } from '@stripwright/strip-geometry';
import { metalSpelt } from '../../order/thickness.js';
import type {
  Booked,
  FreshMark,
  LayoutTimes,
  PlannedCutting,
  PlannedLayout,
  PlannedStock,
  RackDeed,
  RackStock,
} from '../rack.js';
import { RackError } from '../rack-error.js';
import { receiveSheets, refuseBooked } from './hold-plan.js';
import {
  bookedTimes,
  type JobRow,
  jobOf,
  openJob,
  refuseOtherRack,
  toJob,
  wantedTimes,
} from './jobs.js';
import type { Ledger } from './ledger.js';
import { endPromises, promiseStock, sourceRow, usesOf } from './promise-stock.js';

/** Records that layouts of a plan were cut; all that are not booked yet where none are named. */
export function bookPlan(
  ledger: Ledger,
  cutting: PlannedCutting,
  named: readonly LayoutTimes[] | undefined,
): Booked {
  refuseOtherRack(ledger, cutting);
  const isHeld = jobOf(ledger, cutting.plan)?.let_go === 0;
  const begun = openJob(ledger, cutting);
  refuseBooked(ledger, begun);
  const layouts = toBook(ledger, begun, named);
  const booking = newBooking(ledger, begun, isHeld, cutting, layouts);
  const buys = begun.received === 0 && cutting.stock.some(({ bought }) => bought > 0);
  const job = buys ? receiveSheets(ledger, begun, cutting, booking.number) : begun;

  const cutNow = new Set(layouts.map(({ layout }) => cutting.layouts[layout]?.stock));
  const lacking = [...cutting.stock.keys()].flatMap((index) => {
    try {
      promiseStock(ledger, job, cutting, index, booking.number);
      return [];
    } catch (error) {
      // What is cut by now must have been there; what comes later can be planned again.
      if (!(error instanceof RackError) || cutNow.has(index)) throw error;
      return cutting.stock[index]?.mark ?? [];
    }
  });
  const kept = layouts.flatMap((each) => cutLayout(ledger, job, cutting, each, booking.number));
  const after = toJob(ledger, job.number);
  if (after.state === 'booked') endPromises(ledger, job.number, booking.number);
  return {
    booking: booking.number,
    job: after,
    taken: sumOf(ledger, booking.number, 'cut'),
    bought: sumOf(ledger, booking.number, 'bought'),
    kept,
    lacking,
    scrapArea: booking.area,
    ...(booking.grams === undefined ? {} : { scrapGrams: booking.grams }),
  };
}

/** The layouts to book, each once, checked against what is left of them. */
function toBook(
  ledger: Ledger,
  job: JobRow,
  named: readonly LayoutTimes[] | undefined,
): readonly LayoutTimes[] {
  const booked = bookedTimes(ledger, job);
  const left = wantedTimes(job).map((times, layout) => times - (booked[layout] ?? 0));
  if (named === undefined) {
    return left.flatMap((times, layout) => (times > 0 ? [{ layout, times }] : []));
  }
  const asked = new Map<number, number>();
  for (const { layout, times } of named) asked.set(layout, (asked.get(layout) ?? 0) + times);
  return [...asked].map(([layout, times]) => {
    const most = left[layout];
    if (most === undefined) {
      throw new RackError(
        'no such layout',
        `the plan has no layout ${layout + 1}; its layouts are 1 to ${left.length}`,
      );
    }
    if (!Number.isSafeInteger(times) || times < 1) {
      throw new RackError('bad value', `layout ${layout + 1} cannot be booked ${times} times`);
    }
    if (times > most) {
      throw new RackError(
        'booked already',
        most === 0
          ? `layout ${layout + 1} is booked already`
          : `layout ${layout + 1} is left to be booked ${most} times, not ${times}`,
      );
    }
    return { layout, times };
  });
}

interface NewBooking {
  readonly number: number;
  readonly area: number;
  readonly grams: number | undefined;
}

function newBooking(
  ledger: Ledger,
  job: JobRow,
  isHeld: boolean,
  cutting: PlannedCutting,
  layouts: readonly LayoutTimes[],
): NewBooking {
  let area = 0;
  let grams: number | undefined = 0;
  for (const { layout, times } of layouts) {
    const { scrap, stock } = layoutAt(cutting, layout);
    area += scrap * times;
    const weight = scrapWeight(stockAt(cutting, stock), scrap * times);
    grams = grams === undefined || weight === undefined ? undefined : grams + weight;
  }
  const { lastInsertRowid } = ledger
    .prepare(
      `INSERT INTO booking (job, at, scrap_area, scrap_grams, opened, times_let_go)
       VALUES (?, ?, ?, ?, ?, ?)`,
    )
    .run(job.number, ledger.now(), area, grams ?? null, isHeld ? 0 : 1, job.times_let_go);
  return { number: Number(lastInsertRowid), area, grams };
}

function scrapWeight({ metal, thickness }: PlannedStock, area: number): number | undefined {
  if (area === 0) return 0;
  return thickness === undefined ? undefined : sheetWeight(metalSpelt(metal), area, thickness);
}

/** Takes off what one layout used, and puts on what it kept. */
function cutLayout(
  ledger: Ledger,
  job: JobRow,
  cutting: PlannedCutting,
  { layout, times }: LayoutTimes,
  booking: number,
): readonly FreshMark[] {
  const { stock: index, keeps } = layoutAt(cutting, layout);
  const stock = stockAt(cutting, index);
  const { cut } = usesOf(ledger, job, cutting, index);
  const fromRack = times - Math.min(times, Math.max(0, stock.beside - cut));
  const row = fromRack > 0 ? sourceRow(ledger, job, cutting, stock) : undefined;
  if (row !== undefined) {
    const promisedChange = -Math.min(fromRack, ledger.promised(job.number, row.number));
    ledger.enter({
      stock: row.number,
      deed: 'cut',
      change: -fromRack,
      promisedChange,
      job: job.number,
      booking,
    });
  }
  ledger.prepare('INSERT INTO booked_layout VALUES (?, ?, ?)').run(booking, layout, times);
  const origin = `job ${job.number}: ${job.name}, layout ${layout + 1}`;
  const fresh: FreshMark[] = [];
  for (let cutting = 1; cutting <= times; cutting++) {
    for (const { value, ...size } of keeps) {
      const number = ledger.put(
        { ...size, kind: 'offcut', name: '', count: 1, place: '', origin, bookValue: value },
        { deed: 'kept', job: job.number, booking },
      );
      fresh.push({ ...sizeOf(ledger.stock(number)), layout, cutting });
    }
  }
  return fresh;
}

function sizeOf({ mark, length, width, metal, thickness, rolled }: RackStock) {
  return {
    mark,
    length,
    width,
    metal,
    ...(thickness === undefined ? {} : { thickness }),
    ...(rolled === undefined ? {} : { rolled }),
  };
}

/** How much a booking changed the counts by one deed. */
function sumOf(ledger: Ledger, booking: number, deed: RackDeed): Booked['taken'] {
  return ledger
    .prepare<[number, string], { readonly mark: string; readonly count: number }>(
      `SELECT mark, abs(sum(change)) AS count FROM event JOIN stock ON stock.number = event.stock
       WHERE booking = ? AND deed = ? GROUP BY stock.number ORDER BY stock.number`,
    )
    .all(booking, deed);
}

function layoutAt({ layouts }: PlannedCutting, index: number): PlannedLayout {
  const layout = layouts[index];
  if (layout === undefined) throw new Error(`The plan has no layout ${index}.`);
  return layout;
}

function stockAt({ stock }: PlannedCutting, index: number): PlannedStock {
  const found = stock[index];
  if (found === undefined) throw new Error(`The plan has no stock ${index}.`);
  return found;
}
