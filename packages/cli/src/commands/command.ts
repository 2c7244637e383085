import type { Options } from 'yargs';
import type { Environment } from '../environment.js';
import type { ExitCode } from '../exit-code.js';

/**
 * A command, or an action of a group of them. One file each in this folder or in that of
 * the group, and one line in its `index.ts`.
 */
export interface Command {
  /** Its first word, such as `plan`. */
  readonly name: string;
  /** The one thing it works on, such as `order`, and what to say about it; absent if there is none. */
  readonly subject?: {
    readonly name: string;
    readonly meaning: string;
    /** True where an option can stand in its place. */
    readonly optional?: true;
  };
  /** One line for the list of commands. */
  readonly summary: string;
  readonly options: Readonly<Record<string, Options>>;
  /**
   * Each runs as it stands in a folder that holds order.yaml and a drawing, ring.svg, after
   * those before it of all commands.
   */
  readonly examples: readonly CommandExample[];
  /** Ends its help text. */
  readonly epilogue?: readonly string[];
  /**
   * Runs it.
   * @throws DocumentError, CommandError with a message for the user
   */
  run(given: Given, environment: Environment): Promise<ExitCode>;
}

/** A command that is nothing but its actions, each a command of its own: `stripwright rack list`. */
export interface CommandGroup {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** In the order of the help text. */
  readonly actions: readonly Command[];
  /** Ends its help text. */
  readonly epilogue?: readonly string[];
}

export type AnyCommand = Command | CommandGroup;

export function isGroup(command: AnyCommand): command is CommandGroup {
  return 'actions' in command;
}

/** A command with the words that name it, such as `rack` and `list`. */
export interface NamedCommand {
  readonly words: readonly string[];
  readonly command: Command;
}

/** All that can be run: commands, and the actions of groups. */
export function runnable(commands: readonly AnyCommand[]): readonly NamedCommand[] {
  return commands.flatMap((command): readonly NamedCommand[] =>
    isGroup(command)
      ? command.actions.map((action) => ({ words: [command.name, action.name], command: action }))
      : [{ words: [command.name], command }],
  );
}

export interface CommandExample {
  readonly command: string;
  readonly meaning: string;
}

/** What the user gave on the command line. */
export interface Given {
  /** Empty where there is none. */
  readonly subject: string;
  /** The text of an option, if it was given. */
  text(option: string): string | undefined;
  /** All its texts, where it may be given again and again. */
  texts(option: string): readonly string[];
  flag(option: string): boolean;
}

/** An option that takes a text. */
export function textOption(describe: string, group?: string): Options {
  const base = { type: 'string', requiresArg: true, describe } as const;
  return group === undefined ? base : { ...base, group };
}

export function flagOption(describe: string): Options {
  return { type: 'boolean', default: false, describe };
}
