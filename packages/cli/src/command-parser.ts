import yargs, { type Argv } from 'yargs';
import {
  type AnyCommand,
  type Command,
  type CommandGroup,
  type Given,
  isGroup,
} from './commands/command.js';
import { EXIT_CODE_HELP } from './exit-code.js';
import { choiceText } from './faults/fault-text.js';
import { usageError } from './usage-error.js';
import { VERSION } from './version.js';

const HELP_WIDTH = 80;
const COMMON_OPTIONS = ['debug', 'help', 'version'];

/** What to do with the command that was asked for. */
export type Runner = (command: Command, given: Given) => Promise<void>;

/**
 * A parser of command lines, which runs the command that one names.
 *
 * @param argv the command line to be parsed, to tell misuse in the words of its command
 */
export function commandParser(
  commands: readonly AnyCommand[],
  argv: readonly string[],
  run: Runner,
): Argv {
  return commands.reduce(
    (parser, command) => withCommand(parser, command, [], run),
    baseParser(commands, argv),
  );
}

function baseParser(commands: readonly AnyCommand[], argv: readonly string[]): Argv {
  const { words, command } = commandMeant(commands, argv);
  const keys = [...Object.keys(command?.options ?? {}), ...COMMON_OPTIONS];
  return yargs()
    .scriptName('stripwright')
    .usage('$0 <command>\n\nFrom an order of cutters to sheets to buy, cut maps and strips.')
    .locale('en')
    .detectLocale(false)
    .wrap(HELP_WIDTH)
    .exitProcess(false)
    .parserConfiguration({ 'boolean-negation': false, 'camel-case-expansion': false })
    .option('debug', {
      type: 'boolean',
      default: false,
      describe: 'show where a failure came from',
    })
    .strict()
    .recommendCommands()
    .demandCommand(1, `name a command: ${choiceText(commands.map(({ name }) => name))}`)
    .version('version', 'print the version', VERSION)
    .help('help', 'print this help')
    .example('stripwright plan order.yaml --out packet', 'plan an order')
    .epilogue(EXIT_CODE_HELP)
    .fail((message, error) => {
      // yargs throws errors of its own for some misuse and reports the rest as messages.
      if (error !== undefined && error !== null && error.name !== 'YError') throw error;
      throw usageError(error?.message ?? message, words, keys);
    });
}

/** The words of a command line that name a command, as far as they do, and that command. */
function commandMeant(
  commands: readonly AnyCommand[],
  argv: readonly string[],
): { readonly words: readonly string[]; readonly command?: Command } {
  const named = firstNamed(commands, argv);
  if (named === undefined) return { words: [] };
  const { name } = named;
  if (!isGroup(named)) return { words: [name], command: named };
  const action = firstNamed(named.actions, argv.slice(argv.indexOf(name) + 1));
  return action === undefined ? { words: [name] } : { words: [name, action.name], command: action };
}

function firstNamed<T extends AnyCommand>(
  commands: readonly T[],
  argv: readonly string[],
): T | undefined {
  const all = new Map(commands.map((command) => [command.name, command]));
  return all.get(argv.find((word) => all.has(word)) ?? '');
}

/** @param above the words of the groups that the command is in */
function withCommand(
  parser: Argv,
  command: AnyCommand,
  above: readonly string[],
  run: Runner,
): Argv {
  if (isGroup(command)) {
    return parser.command({
      command: command.name,
      describe: command.summary,
      builder: (own) => declareGroup(own, command, above, run),
      // One of its actions is demanded, which runs instead.
      handler: () => undefined,
    });
  }
  return parser.command({
    command: usageOf(command),
    describe: command.summary,
    builder: (own) => declare(own, command, above),
    handler: async (words) => {
      const input = given(words, command);
      if (isNeeded(command.subject) && input.subject === '')
        throw usageError('Not enough non-option arguments', [...above, command.name], []);
      await run(command, input);
    },
  });
}

function declareGroup(
  parser: Argv,
  group: CommandGroup,
  above: readonly string[],
  run: Runner,
): Argv {
  const { name, summary, actions, epilogue = [] } = group;
  const words = [...above, name];
  return actions
    .reduce(
      (built, action) => withCommand(built, action, words, run),
      parser.usage(`$0 ${words.join(' ')} <action>\n\n${sentence(summary)}`),
    )
    .demandCommand(1, `name an action: ${choiceText(actions.map((action) => action.name))}`)
    .epilogue(ending(epilogue));
}

/** `plan <order>`, `blank [outline]` */
function usageOf({ name, subject }: Command): string {
  if (subject === undefined) return name;
  return isNeeded(subject) ? `${name} <${subject.name}>` : `${name} [${subject.name}]`;
}

function isNeeded(subject: Command['subject']): boolean {
  return subject !== undefined && subject.optional !== true;
}

function declare(parser: Argv, command: Command, above: readonly string[]): Argv {
  const { subject, summary, options, examples, epilogue = [] } = command;
  const words = [...above, usageOf(command)].join(' ');
  const usage = parser.usage(`$0 ${words}\n\n${sentence(summary)}`);
  const positioned =
    subject === undefined
      ? usage
      : usage.positional(subject.name, {
          type: 'string',
          describe: subject.meaning,
          demandOption: isNeeded(subject),
        });
  const declared = positioned.options({ ...options }).epilogue(ending(epilogue));
  return examples.reduce(
    (built, { command, meaning }) => built.example(command, meaning),
    declared,
  );
}

/** A summary as a sentence of its own. */
function sentence(summary: string): string {
  return `${summary.charAt(0).toUpperCase()}${summary.slice(1)}.`;
}

function ending(epilogue: readonly string[]): string {
  return [...epilogue, ...(epilogue.length > 0 ? [''] : []), EXIT_CODE_HELP].join('\n');
}

function given(words: Readonly<Record<string, unknown>>, { subject }: Command): Given {
  return {
    subject: subject === undefined ? '' : String(words[subject.name] ?? ''),
    text(option) {
      const value = last(words[option]);
      return typeof value === 'string' ? value : undefined;
    },
    texts: (option) => [words[option]].flat().filter((value) => typeof value === 'string'),
    flag: (option) => last(words[option]) === true,
  };
}

/** Of an option that was given again and again, the last counts. */
function last(value: unknown): unknown {
  return Array.isArray(value) ? value.at(-1) : value;
}
