import { CommandError, EXIT } from './exit-code.js';
import { nearestSpelling } from './faults/nearest-spelling.js';

/** The options that need no command. */
const WITHOUT_COMMAND = ['help', 'version', 'debug'];

/**
 * Refuses an option that there is none of where no command is named. What reads command
 * lines would tell of the missing command alone.
 */
export function refuseStrayOption(argv: readonly string[]): void {
  if (argv.some((word) => !word.startsWith('-'))) return;
  const stray = argv.find(
    (word) => /^--?[a-z]/i.test(word) && !WITHOUT_COMMAND.includes(bare(word)),
  );
  if (stray === undefined) return;
  const nearest = nearestSpelling(bare(stray), WITHOUT_COMMAND);
  const meant = nearest === undefined ? '; see' : `; did you mean --${nearest}? See`;
  throw new CommandError(EXIT.badInput, `unknown: ${bare(stray)}${meant} stripwright --help`);
}

const bare = (option: string) => option.replace(/^-+/, '').replace(/=.*$/, '');
