import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { planCutting, verifyPlan } from '@stripwright/nesting';
import { afterAll } from 'vitest';
import type { Command, Given } from './commands/command.js';
import type { Environment, Planner } from './environment.js';
import { main, tell } from './main.js';
import { nodeFiles } from './node-environment.js';
import { sqliteRacks } from './rack/sqlite-racks.js';

/** What a run of the command left behind. */
export interface Ran {
  readonly exitCode: number;
  readonly stdout: string;
  readonly stderr: string;
}

export const realPlanner: Planner = { planCutting, verifyPlan };

/** A new folder, gone again when the test file is done. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'stripwright-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** What a run of the command is given by its test. */
export interface RunOptions {
  readonly cwd: string;
  readonly planner?: Planner;
  readonly isTerminal?: boolean;
  readonly files?: Environment['files'];
  readonly interrupts?: Environment['interrupts'];
  /** What the user types when asked, line by line; then the input ends. */
  readonly answers?: readonly string[];
  readonly colour?: boolean;
}

/** Runs the command in a folder on the real file system, with its output caught. */
export async function run(argv: readonly string[], options: RunOptions): Promise<Ran> {
  const { environment, caught } = caughtEnvironment(options);
  const exitCode = await main(argv, environment);
  return { exitCode, ...caught };
}

/** Like `run`, for one command, without the reading of a command line, which takes most of the time. */
export async function runAlone(
  command: Command,
  subject: string,
  texts: Readonly<Record<string, string>>,
  options: RunOptions,
): Promise<Ran> {
  const { environment, caught } = caughtEnvironment(options);
  const given: Given = {
    subject,
    text: (option) => texts[option],
    texts: (option) => [texts[option] ?? []].flat(),
    flag: () => false,
  };
  const exitCode = await command
    .run(given, environment)
    .catch((error: unknown) => tell(error, false, environment));
  return { exitCode, ...caught };
}

function caughtEnvironment(options: RunOptions) {
  const caught = { stdout: '', stderr: '' };
  const into = (name: keyof typeof caught) => ({
    isTerminal: options.isTerminal ?? false,
    colour: options.colour ?? false,
    write: (text: string) => {
      caught[name] += text;
    },
  });
  let time = 0;
  const answers = options.answers?.values();
  const environment: Environment = {
    cwd: options.cwd,
    stdout: into('stdout'),
    stderr: into('stderr'),
    files: options.files ?? nodeFiles,
    clock: () => {
      time += 100;
      return time;
    },
    planner: options.planner ?? realPlanner,
    interrupts: options.interrupts ?? { once: () => () => undefined },
    ...(answers && {
      ask: async (question: string) => {
        caught.stderr += question;
        return answers.next().value;
      },
    }),
    racks: sqliteRacks({ now: () => '2026-03-02T09:00:00.000Z', newId: () => 'rack of tests' }),
    usualRack: join(options.cwd, 'usual', 'rack.sqlite'),
  };
  return { environment, caught };
}
