import type { Booked, RackJob } from '../rack/rack.js';

/** A booking for another program: layouts by the numbers of their cut maps, from 1. */
export function bookedJson({ job, kept, ...booked }: Booked): string {
  return jsonText({
    booking: booked.booking,
    job: jobEntry(job),
    taken: booked.taken,
    bought: booked.bought,
    kept: kept.map((fresh) => ({ ...fresh, layout: fresh.layout + 1 })),
    lacking: booked.lacking,
    scrapArea: booked.scrapArea,
    ...(booked.scrapGrams === undefined ? {} : { scrapGrams: booked.scrapGrams }),
  });
}

/** What was undone. */
export function undoneJson(undone: {
  readonly booking: number;
  readonly job: RackJob;
  readonly gone: readonly string[];
}): string {
  return jsonText({ ...undone, job: jobEntry(undone.job) });
}

export function jobJson(job: RackJob): string {
  return jsonText({ job: jobEntry(job) });
}

function jobEntry(job: RackJob) {
  const { number, name, plan, state, since, layouts } = job;
  const numbered = layouts.map((layout, index) => ({ layout: index + 1, ...layout }));
  return { number, name, plan, state, since, layouts: numbered };
}

function jsonText(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
