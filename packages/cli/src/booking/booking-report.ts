import { printSize, type Rule } from '../length/print-length.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import type { Booked, LayoutTimes, RackJob, RackStock } from '../rack/rack.js';
import { HANDLING_CAUTION } from '../report/cautions.js';
import { rackTable } from '../report/rack-table.js';
import { table, wrap } from '../report/table.js';
import { printArea, printWeight } from './print-weight.js';

/** What lies, or lay, under a mark. */
export type Find = (mark: string) => RackStock | undefined;

export const ruleOf = ({ order }: PlanFile): Rule => ({
  units: order.units,
  mark: order.smallestMark,
});

/** What a booking did, what to write on the metal, and what is left to be booked. */
export function bookedReport(file: PlanFile, booked: Booked, find: Find): readonly string[] {
  const { booking, job } = booked;
  return [
    ...wrap(`Booked: ${job.name} (booking ${booking} of job ${job.number})`, '  '),
    ...wrap(`Left to book: ${leftText(job)}`, '  '),
    ...listed('Taken off the rack', beyond(booked.taken, booked.bought), file, find),
    ...listed('Bought and cut', shared(booked.taken, booked.bought), file, find),
    ...listed('Bought, and on the rack now', beyond(booked.bought, booked.taken), file, find),
    ...freshMarks(booked, file),
    ...lacking(booked),
    '',
    ...wrap(`Scrap: ${scrapText(booked, file)}`, '  '),
    ...(booked.kept.length === 0 ? [] : [HANDLING_CAUTION]),
  ];
}

type Counts = readonly { readonly mark: string; readonly count: number }[];

/** What is in both of two lists; sheets that are bought to be cut at once never lay on the rack. */
function shared(one: Counts, other: Counts): Counts {
  return one.flatMap(({ mark, count }) => {
    const both = Math.min(count, countOf(other, mark));
    return both === 0 ? [] : [{ mark, count: both }];
  });
}

/** What one list has more than another. */
function beyond(one: Counts, other: Counts): Counts {
  return one.flatMap(({ mark, count }) => {
    const more = count - Math.min(count, countOf(other, mark));
    return more === 0 ? [] : [{ mark, count: more }];
  });
}

function countOf(counts: Counts, mark: string): number {
  return counts.find((entry) => entry.mark === mark)?.count ?? 0;
}

/** The layouts of a job that are not booked yet, and how often. */
export function leftOf({ layouts }: RackJob): readonly LayoutTimes[] {
  return layouts.flatMap(({ times, booked }, layout) =>
    times > booked ? [{ layout, times: times - booked }] : [],
  );
}

function leftText(job: RackJob): string {
  const parts = leftOf(job).map(({ layout, times }) => `map ${layout + 1} x ${times}`);
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}

/** A table of things on the rack under a heading, after a blank line; nothing where there are none. */
export function listed(
  heading: string,
  things: Counts,
  file: PlanFile,
  find: Find,
): readonly string[] {
  if (things.length === 0) return [];
  return [
    '',
    heading,
    ...rackTable(
      things.map(({ mark, count }) => {
        const stock = find(mark);
        const size = stock === undefined ? '' : printSize(stock.length, stock.width, ruleOf(file));
        return { count, mark, size, place: stock?.place ?? '' };
      }),
    ),
  ];
}

function freshMarks({ kept }: Booked, file: PlanFile): readonly string[] {
  if (kept.length === 0) return ['', 'Kept: nothing'];
  return [
    '',
    'Write these marks on what is kept',
    ...table(
      [
        { heading: 'Mark', align: 'left' },
        { heading: 'Size', align: 'left' },
        { heading: 'From', align: 'left' },
      ],
      kept.map(({ mark, length, width, layout, cutting }) => [
        mark,
        printSize(length, width, ruleOf(file)),
        `map ${layout + 1}, cutting ${cutting}`,
      ]),
    ),
  ];
}

function lacking({ lacking: marks }: Booked): readonly string[] {
  if (marks.length === 0) return [];
  const which = marks.length === 1 ? `${marks.join()} is` : `${marks.join(', ')} are`;
  return [
    '',
    ...wrap(
      `What is left of the plan cannot be cut as planned: ${which} gone, changed or promised ` +
        'to another plan. Plan what is left again.',
      '  ',
    ),
  ];
}

function scrapText({ scrapArea, scrapGrams }: Booked, { order }: PlanFile): string {
  const area = printArea(scrapArea, order.units);
  return scrapGrams === undefined
    ? `${area}; no weight, since the order tells no thickness`
    : `${printWeight(scrapGrams, order.units)} (${area})`;
}

/** What was promised to a plan, or came to the rack for it. */
export function heldReport(
  file: PlanFile,
  job: RackJob,
  promised: Counts,
  find: Find,
): readonly string[] {
  const what = promised.length === 0 ? '; it takes nothing from the rack' : '';
  return [
    ...wrap(`Held: ${job.name} (job ${job.number})${what}`, '  '),
    ...listed('Promised to it', promised, file, find),
  ];
}
