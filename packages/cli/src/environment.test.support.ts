import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { planCutting, verifyPlan } from '@stripwright/nesting';
import { afterAll } from 'vitest';
import type { Environment, Planner } from './environment.js';
import { main } from './main.js';
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

/** Runs the command in a folder on the real file system, with its output caught. */
export async function run(
  argv: readonly string[],
  options: {
    readonly cwd: string;
    readonly planner?: Planner;
    readonly isTerminal?: boolean;
    readonly files?: Environment['files'];
    readonly interrupts?: Environment['interrupts'];
    /** What the user types when asked, line by line; then the input ends. */
    readonly answers?: readonly string[];
    readonly colour?: boolean;
  },
): Promise<Ran> {
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
  const exitCode = await main(argv, {
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
      ask: async (question) => {
        caught.stderr += question;
        return answers.next().value;
      },
    }),
    racks: sqliteRacks({ now: () => '2026-03-02T09:00:00.000Z', newId: () => 'rack of tests' }),
    usualRack: join(options.cwd, 'usual', 'rack.sqlite'),
  });
  return { exitCode, ...caught };
}
