import type { Environment } from '../environment.js';
import { printSize } from '../length/print-length.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import type { Rack, RackJob } from '../rack/rack.js';
import { counted } from '../report/counted.js';
import { table, wrap } from '../report/table.js';
import { ruleOf } from './booking-report.js';
import { readCutting } from './read-cutting.js';

/** What came to the rack for a plan. */
export interface Received {
  readonly job: RackJob;
  readonly sheets: readonly { readonly name: string; readonly count: number }[];
  /** What to print. */
  readonly report: readonly string[];
}

/**
 * The sheets that a plan buys come to the rack and are promised to it.
 * @param name of the plan file, which is verified first
 * @throws DocumentError for a plan that is not good, RackError
 */
export async function receivePlan(
  name: string,
  rack: Rack,
  environment: Environment,
): Promise<Received> {
  const { file, cutting } = await readCutting(name, environment);
  const job = rack.receive(cutting);
  const sheets = file.buy.map(({ stock, count }) => ({ name: stock, count }));
  return { job, sheets, report: receivedReport(file, job) };
}

function receivedReport(file: PlanFile, job: RackJob): readonly string[] {
  const all = file.buy.reduce((sum, { count }) => sum + count, 0);
  if (all === 0) return wrap(`${job.name} (job ${job.number}) buys no sheets.`, '  ');
  return [
    ...wrap(`Received for ${job.name} (job ${job.number}): ${counted(all, 'sheet')}`, '  '),
    ...table(
      [
        { heading: 'Count', align: 'right' },
        { heading: 'Sheet', align: 'left', shrinks: true },
        { heading: 'Size', align: 'left' },
      ],
      file.buy.map(({ stock, count }) => {
        const sheet = file.stock.find(({ id }) => id === stock);
        const { length = 0, width = 0 } = sheet ?? {};
        const sides = [Math.max(length, width), Math.min(length, width)] as const;
        return [`${count}`, stock, printSize(...sides, ruleOf(file))];
      }),
    ),
  ];
}
