import { EXIT } from '../exit-code.js';
import { finishPacketOf } from '../packet/packet-folder.js';
import { type PlanOnFile, readPlanFile } from '../plan-file/read-plan-file.js';
import { planFileFaults } from '../planning/plan-file-faults.js';
import { readInput } from '../read-input.js';
import { counted } from '../report/counted.js';
import { wrap } from '../report/table.js';
import { type Command, flagOption } from './command.js';

/** `stripwright check`: whether a plan file holds a good plan, from the file alone. */
export const check: Command = {
  name: 'check',
  subject: { name: 'plan', meaning: 'a plan.json written by stripwright plan' },
  summary: 'check that a plan file holds a good plan',
  options: {
    json: flagOption('print what was found for another program'),
    quiet: flagOption('print nothing if it is good'),
  },
  examples: [
    { command: 'stripwright check packet/plan.json', meaning: 'check a plan before cutting by it' },
  ],
  async run(given, environment) {
    const name = given.subject;
    await finishPacketOf(name, environment);
    const onFile = readPlanFile(await readInput(name, environment), name);
    const faults = planFileFaults(name, onFile, environment);
    if (given.flag('json')) {
      environment.stdout.write(
        `${JSON.stringify({ good: faults.length === 0, faults }, null, 2)}\n`,
      );
      return faults.length === 0 ? EXIT.done : EXIT.badInput;
    }
    if (faults.length > 0) {
      environment.stderr.write(`${faults.join('\n')}\n`);
      return EXIT.badInput;
    }
    if (given.flag('quiet')) return EXIT.done;
    environment.stdout.write(`${whatWasChecked(name, onFile).join('\n')}\n`);
    return EXIT.done;
  },
};

function whatWasChecked(name: string, { file }: PlanOnFile): readonly string[] {
  const pieces = file.layouts.reduce(
    (sum, { count, pieces: { length } }) => sum + count * length,
    0,
  );
  return wrap(
    `${name}: good: ${counted(file.layouts.length, 'layout')} and ${counted(pieces, 'piece')} ` +
      'checked; pieces lie whole and apart on their stock, every cut runs from edge to edge, ' +
      'quantities, stock, purchases and costs agree, and strips agree with their blanks.',
    '  ',
  );
}
