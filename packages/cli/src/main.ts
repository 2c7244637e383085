import yargs, { type Argv } from 'yargs';
import type { Command, Given } from './commands/command.js';
import { commands } from './commands/index.js';
import type { Environment } from './environment.js';
import { CommandError, EXIT, EXIT_CODE_HELP, type ExitCode } from './exit-code.js';
import { DocumentError } from './faults/fault.js';
import { choiceText } from './faults/fault-text.js';
import { RackError } from './rack/rack-error.js';
import { refuseStrayOption } from './stray-option.js';
import { usageError } from './usage-error.js';
import { VERSION } from './version.js';

const HELP_WIDTH = 80;
const COMMON_OPTIONS = ['debug', 'help', 'version'];

/**
 * Runs the stripwright command.
 *
 * @param argv the words after the command's name
 * @returns the exit code; every failure is told on stderr
 */
export async function main(argv: readonly string[], environment: Environment): Promise<ExitCode> {
  try {
    return await parseAndRun(argv, environment);
  } catch (error) {
    return tell(error, argv.includes('--debug'), environment);
  }
}

async function parseAndRun(argv: readonly string[], environment: Environment): Promise<ExitCode> {
  refuseStrayOption(argv);
  let exitCode: ExitCode = EXIT.done;
  const parser = commands.reduce(
    (built, command) =>
      built.command({
        command: usageOf(command),
        describe: command.summary,
        builder: (own) => declare(own, command),
        handler: async (words) => {
          const input = given(words, command);
          if (isNeeded(command.subject) && input.subject === '')
            throw usageError('Not enough non-option arguments', command.name, []);
          exitCode = await command.run(input, environment);
        },
      }),
    baseParser(argv),
  );
  // With a callback, yargs hands over its help text instead of printing it.
  await parser.parseAsync([...argv], {}, (_error, _words, output) => {
    if (output !== '') environment.stdout.write(`${output}\n`);
  });
  return exitCode;
}

function baseParser(argv: readonly string[]): Argv {
  const command = commands.find(({ name }) => argv.includes(name));
  const keys = [...Object.keys(command?.options ?? {}), ...COMMON_OPTIONS];
  return yargs()
    .scriptName('stripwright')
    .usage('$0 <command>\n\nFrom an order of cutters to sheets to buy, cut maps and strips.')
    .locale('en')
    .detectLocale(false)
    .wrap(HELP_WIDTH)
    .exitProcess(false)
    .parserConfiguration({
      'boolean-negation': false,
      'camel-case-expansion': false,
    })
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
      throw usageError(error?.message ?? message, command?.name, keys);
    });
}

/** `plan <order>`, `blank [outline]` */
function usageOf({ name, subject }: Command): string {
  if (subject === undefined) return name;
  return isNeeded(subject) ? `${name} <${subject.name}>` : `${name} [${subject.name}]`;
}

function isNeeded(subject: Command['subject']): boolean {
  return subject !== undefined && subject.optional !== true;
}

function declare(parser: Argv, command: Command): Argv {
  const { subject, summary, options, examples, epilogue } = command;
  const usage = parser.usage(
    `$0 ${usageOf(command)}\n\n${summary.charAt(0).toUpperCase()}${summary.slice(1)}.`,
  );
  const positioned =
    subject === undefined
      ? usage
      : usage.positional(subject.name, {
          type: 'string',
          describe: subject.meaning,
          demandOption: isNeeded(subject),
        });
  const declared = positioned
    .options({ ...options })
    .epilogue([...(epilogue ?? []), ...(epilogue ? [''] : []), EXIT_CODE_HELP].join('\n'));
  return examples.reduce(
    (built, { command, meaning }) => built.example(command, meaning),
    declared,
  );
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

/** Says what went wrong, and gives the exit code for it. */
export function tell(error: unknown, debug: boolean, environment: Environment): ExitCode {
  const { stderr } = environment;
  const trace = debug && error instanceof Error ? `${error.stack}\n` : '';
  if (error instanceof DocumentError) {
    stderr.write(`${error.message}\n${trace}`);
    return EXIT.badInput;
  }
  if (error instanceof CommandError) {
    const lines = error.message.split('\n').map((line) => `stripwright: ${line}\n`);
    stderr.write(`${lines.join('')}${trace}`);
    return error.exitCode;
  }
  if (error instanceof RackError) {
    return tell(
      new CommandError(EXIT.badInput, error.message, { cause: error }),
      debug,
      environment,
    );
  }
  const message = error instanceof Error ? error.message : String(error);
  const hint = debug ? '' : ' Please report it with what --debug shows.';
  stderr.write(`stripwright: a fault of its own: ${message}.${hint}\n${trace}`);
  return EXIT.ourFault;
}
