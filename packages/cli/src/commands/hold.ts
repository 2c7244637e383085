import { jobJson } from '../booking/booking-json.js';
import { heldReport } from '../booking/booking-report.js';
import { readCutting } from '../booking/read-cutting.js';
import { EXIT } from '../exit-code.js';
import { takenFromRack } from '../report/rack-report.js';
import { wrap } from '../report/table.js';
import { type Command, flagOption } from './command.js';
import { RACK_OPTION, withRack } from './rack/open-rack.js';

/** `stripwright hold`: what a plan takes from the rack is promised to it, so that no other has it. */
export const hold: Command = {
  name: 'hold',
  subject: { name: 'plan', meaning: 'a plan.json written by stripwright plan' },
  summary: 'promise to a plan what it takes from the rack, or let it go',
  options: {
    'let-go': flagOption('end the promise'),
    ...RACK_OPTION,
    json: flagOption('print the job for another program'),
  },
  examples: [
    { command: 'stripwright hold packet/plan.json', meaning: 'keep its metal for it' },
    { command: 'stripwright hold packet/plan.json --let-go', meaning: 'others may have it' },
  ],
  async run(given, environment) {
    const { stdout } = environment;
    const { file, cutting } = await readCutting(given.subject, environment);
    const letGo = given.flag('let-go');
    const text = await withRack(given, environment, (rack) => {
      const job = letGo ? rack.letGo(cutting.plan) : rack.hold(cutting);
      if (given.flag('json')) return jobJson(job);
      const lines = letGo
        ? wrap(`Let go: ${job.name} (job ${job.number}); others may have its metal.`, '  ')
        : heldReport(file, job, takenFromRack(file), (mark) => rack.find(mark));
      return `${lines.join('\n')}\n`;
    });
    stdout.write(text);
    return EXIT.done;
  },
};
