import { commandParser } from './command-parser.js';
import { commands } from './commands/index.js';
import type { Environment } from './environment.js';
import { CommandError, EXIT, type ExitCode } from './exit-code.js';
import { DocumentError } from './faults/fault.js';
import { RackError } from './rack/rack-error.js';
import { refuseStrayOption } from './stray-option.js';

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
  const parser = commandParser(commands, argv, async (command, given) => {
    exitCode = await command.run(given, environment);
  });
  // With a callback, yargs hands over its help text instead of printing it.
  await parser.parseAsync([...argv], {}, (_error, _words, output) => {
    if (output !== '') environment.stdout.write(`${output}\n`);
  });
  return exitCode;
}

/** Tells on stderr why a command failed. @returns its exit code */
export function tell(error: unknown, debug: boolean, environment: Environment): ExitCode {
  const { stderr } = environment;
  const trace = debug && error instanceof Error ? `${error.stack}\n` : '';
  if (error instanceof DocumentError) {
    stderr.write(`${error.message}\n${trace}`);
    return EXIT.badInput;
  }
  if (error instanceof RackError) {
    return tell(
      new CommandError(EXIT.badInput, error.message, { cause: error }),
      debug,
      environment,
    );
  }
  if (error instanceof CommandError) {
    const lines = error.message.split('\n').map((line) => `stripwright: ${line}\n`);
    stderr.write(`${lines.join('')}${trace}`);
    return error.exitCode;
  }
  const message = error instanceof Error ? error.message : String(error);
  const hint = debug ? '' : ' Please report it with what --debug shows.';
  stderr.write(`stripwright: a fault of its own: ${message}.${hint}\n${trace}`);
  return EXIT.ourFault;
}
