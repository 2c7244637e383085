import { bookedJson, undoneJson } from '../booking/booking-json.js';
import { bookedReport } from '../booking/booking-report.js';
import { readLayoutTimes } from '../booking/layout-times.js';
import { readCutting } from '../booking/read-cutting.js';
import type { Environment } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import { complaintText } from '../faults/fault-text.js';
import type { LayoutTimes } from '../rack/rack.js';
import { wrap } from '../report/table.js';
import { type Command, flagOption, type Given, textOption } from './command.js';
import { namedRack, rackOption } from './rack-options.js';

/** `stripwright book`: what was cut by a plan goes off the rack, what was kept comes to it. */
export const book: Command = {
  name: 'book',
  subject: {
    name: 'plan',
    meaning: 'the plan.json that was cut by',
    optional: true,
  },
  summary: 'record that a plan was cut: take off the rack, put on what is kept',
  options: {
    layout: {
      ...textOption(
        'the numbers of the cut maps that were cut, such as 2 or 1,3x2; all when absent',
      ),
      array: true,
      nargs: 1,
    },
    undo: flagOption('take back the last booking that stands'),
    rack: rackOption(),
    json: flagOption('print what was booked for another program'),
  },
  examples: [
    { command: 'stripwright book packet/plan.json', meaning: 'all of the plan was cut' },
    { command: 'stripwright book --undo', meaning: 'it was not' },
    { command: 'stripwright book packet/plan.json --layout 1', meaning: 'cut map 1 was cut once' },
  ],
  async run(given, environment) {
    const lines = given.flag('undo')
      ? undo(given, environment)
      : await bookPlan(given, environment);
    environment.stdout.write(lines);
    return EXIT.done;
  },
};

async function bookPlan(given: Given, environment: Environment): Promise<string> {
  if (given.subject === '') {
    throw new CommandError(EXIT.badInput, 'name the plan.json that was cut by, or give --undo');
  }
  const layouts = layoutsGiven(given);
  const { file, cutting } = await readCutting(given.subject, environment);
  const rack = namedRack(given, environment);
  try {
    const booked = rack.book(cutting, layouts);
    if (given.flag('json')) return bookedJson(booked);
    return `${bookedReport(file, booked, (mark) => rack.find(mark)).join('\n')}\n`;
  } finally {
    rack.close();
  }
}

/** Undefined for all. */
function layoutsGiven(given: Given): readonly LayoutTimes[] | undefined {
  const texts = given.texts('layout');
  if (texts.length === 0) return undefined;
  return texts.flatMap((text) => {
    const read = readLayoutTimes(text);
    if (read.ok) return read.value;
    throw new CommandError(EXIT.badInput, complaintText('--layout', read.complaint, text));
  });
}

function undo(given: Given, environment: Environment): string {
  if (given.subject !== '' || given.texts('layout').length > 0) {
    const message = '--undo takes back the last booking, whatever its plan; leave the rest out';
    throw new CommandError(EXIT.badInput, message);
  }
  const rack = namedRack(given, environment);
  try {
    const undone = rack.undo();
    if (given.flag('json')) return undoneJson(undone);
    const { booking, job, gone } = undone;
    const lines = [
      ...wrap(`Undone: booking ${booking} of job ${job.number}, ${job.name}`, '  '),
      ...(gone.length === 0
        ? []
        : wrap(`No longer on the rack: ${gone.join(', ')}; cross these marks out.`, '  ')),
    ];
    return `${lines.join('\n')}\n`;
  } finally {
    rack.close();
  }
}
