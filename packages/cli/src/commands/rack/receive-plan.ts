import { jobJson } from '../../booking/booking-json.js';
import { receivePlan } from '../../booking/receive-plan.js';
import { EXIT } from '../../exit-code.js';
import { OptionReader } from '../option-reader.js';
import type { Delivery } from './delivery.js';
import { withRack } from './open-rack.js';
import { STOCK_OPTIONS } from './stock-options.js';

/** What a plan tells by itself. */
const TOLD = ['count', 'name', ...Object.keys(STOCK_OPTIONS)];

/** The sheets that a plan buys. */
export const receivePlanned: Delivery = {
  subject: 'plan',
  meaning: 'the plan.json that they were bought for',
  examples: [
    {
      command: 'stripwright rack receive packet/plan.json',
      meaning: 'what a plan buys came, and is promised to it',
    },
  ],
  takes: (subject) => /\.json$/i.test(subject.trim()),
  async receive(given, environment) {
    const options = new OptionReader(given);
    for (const key of TOLD) {
      const found = given.text(key);
      if (found === undefined) continue;
      const complaint = { code: 'disagrees', expected: 'left out, as the plan tells it' } as const;
      options.complain(key, complaint, found);
    }
    options.raiseFaults();
    const { job, report } = await withRack(given, environment, (rack) =>
      receivePlan(given.subject, rack, environment),
    );
    environment.stdout.write(given.flag('json') ? jobJson(job) : `${report.join('\n')}\n`);
    return EXIT.done;
  },
};
