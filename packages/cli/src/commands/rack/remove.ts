import { CommandError, EXIT } from '../../exit-code.js';
import { complaintText } from '../../faults/fault-text.js';
import { refuse } from '../../faults/reading.js';
import { MOST, readCount } from '../../order/fields.js';
import type { RackStock } from '../../rack/rack.js';
import { readRackText } from '../../rack/rack-text.js';
import { type Command, textOption } from '../command.js';
import { OptionReader } from '../option-reader.js';
import { MARK_SUBJECT, markedStock } from './marked-stock.js';
import { RACK_OPTION, withRack } from './open-rack.js';

const REASON = 'why, such as sold, bent or rusty';

/** `stripwright rack remove`: what no plan used is gone. */
export const remove: Command = {
  name: 'remove',
  subject: MARK_SUBJECT,
  summary: 'take metal off the rack that no plan uses',
  options: {
    reason: textOption(REASON),
    count: textOption('how many, of whole sheets'),
    ...RACK_OPTION,
  },
  examples: [
    { command: 'stripwright rack remove CER --reason rusty', meaning: 'an offcut gone to scrap' },
    {
      command: 'stripwright rack remove CFN --count 2 --reason "sold to a neighbour"',
      meaning: 'two of some whole sheets',
    },
  ],
  async run(given, environment) {
    const options = new OptionReader(given);
    const reason = options.required(
      'reason',
      (text) =>
        text.trim() === '' ? refuse({ code: 'missing', hint: REASON }) : readRackText(text),
      REASON,
    );
    const count = options.optional('count', (text) => readCount(text, 1, MOST));
    options.raiseFaults();
    // Had it not been read, that would have been a fault.
    if (reason === undefined) throw new Error('Options were not read.');
    const left = await withRack(given, environment, (rack) => {
      const stock = markedStock(given.subject, rack);
      rack.remove(stock.mark, count ?? usualCount(stock), reason);
      return { mark: stock.mark, kind: stock.kind, count: rack.find(stock.mark)?.count ?? 0 };
    });
    const words = left.count === 0 ? 'is off the rack' : `${left.count} are left`;
    environment.stdout.write(`${left.mark}: ${words}.\n`);
    return EXIT.done;
  },
};

function usualCount({ kind, count }: RackStock): number {
  if (kind === 'offcut') return 1;
  const complaint = { code: 'missing', hint: `how many of the ${count} sheets` } as const;
  throw new CommandError(EXIT.badInput, complaintText('--count', complaint));
}
