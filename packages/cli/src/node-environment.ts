import { randomUUID } from 'node:crypto';
import { link, mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { verifyPlan } from '@stripwright/nesting';
import { planInWorker } from '@stripwright/nesting/worker';
import { askOn } from './ask-on-terminal.js';
import type { Environment, Files, Interrupts, Output } from './environment.js';
import { sqliteRacks } from './rack/sqlite-racks.js';
import { wantsColour } from './report/emphasis.js';
import { usualRackOf } from './usual-rack.js';

/** The environment of a command started from a shell. */
export function nodeEnvironment(): Environment {
  return {
    cwd: process.cwd(),
    stdout: outputTo(process.stdout),
    stderr: outputTo(process.stderr),
    files: nodeFiles,
    clock: () => performance.now(),
    // In a thread, so that this one hears of Ctrl-C.
    planner: { planCutting: planInWorker, verifyPlan },
    interrupts: nodeInterrupts,
    // On stderr, so that what is written to stdout stays what was asked for.
    ...(process.stdin.isTTY === true && process.stderr.isTTY === true
      ? { ask: askOn(process.stdin, process.stderr) }
      : {}),
    racks: sqliteRacks({ now: () => new Date().toISOString(), newId: randomUUID }),
    usualRack: usualRackOf(process.platform, process.env, homedir()),
  };
}

/** While nobody waits, Node ends the program, so that a second Ctrl-C does. */
const nodeInterrupts: Interrupts = {
  once(told) {
    process.once('SIGINT', told);
    return () => process.off('SIGINT', told);
  },
};

export const nodeFiles: Files = {
  async read(path) {
    return new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path));
  },
  write: (path, content) => writeFile(path, content),
  create,
  rename: (from, to) => rename(from, to),
  remove: (path) => rm(path, { force: true }),
  makeFolder,
  list: (path) => readdir(path),
};

/** A link is made in one step and never over another file, as a renaming would be. */
async function create(path: string, text: string): Promise<void> {
  const partial = join(dirname(path), `.${basename(path)}.partial`);
  try {
    await writeFile(partial, text);
    await link(partial, path);
  } catch (error) {
    // Some file systems, such as those of memory sticks, know no links.
    if (!isCoded(error) || !NO_LINKS.includes(error.code)) throw error;
    await writeFile(path, text, { flag: 'wx' });
  } finally {
    await rm(partial, { force: true });
  }
}

const NO_LINKS: readonly string[] = ['EPERM', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP'];

/**
 * Makes a folder and those above it. Node's own recursive way never returns on
 * file systems that answer "no such folder" to the making of one, such as /proc.
 */
async function makeFolder(path: string): Promise<void> {
  try {
    await mkdir(path);
  } catch (error) {
    if (!isCoded(error)) throw error;
    if (error.code === 'EEXIST' && (await stat(path)).isDirectory()) return;
    if (error.code !== 'ENOENT' || dirname(path) === path) throw error;
    await makeFolder(dirname(path));
    await mkdir(path);
  }
}

function isCoded(error: unknown): error is Error & { readonly code: string } {
  return error instanceof Error && 'code' in error && typeof error.code === 'string';
}

function outputTo(stream: NodeJS.WriteStream): Output {
  // A reader that leaves early, such as `head`, is no fault.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  return {
    isTerminal: stream.isTTY === true,
    colour: wantsColour(stream.isTTY === true, process.env),
    write: (text) => {
      stream.write(text);
    },
  };
}
