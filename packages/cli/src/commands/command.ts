import type { Options } from 'yargs';
import type { Environment } from '../environment.js';
import type { ExitCode } from '../exit-code.js';

/** A subcommand. One file each in this folder, and one line in `index.ts`. */
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
  /** Each runs as it stands in a folder that holds order.yaml, and a drawing, ring.svg. */
  readonly examples: readonly CommandExample[];
  /** Ends its help text. */
  readonly epilogue?: readonly string[];
  /**
   * Runs it.
   * @throws DocumentError, CommandError with a message for the user
   */
  run(given: Given, environment: Environment): Promise<ExitCode>;
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
