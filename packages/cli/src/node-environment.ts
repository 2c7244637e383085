import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { planCutting, verifyPlan } from '@stripwright/nesting';
import type { Environment, Files, Output } from './environment.js';

/** The environment of a command started from a shell. */
export function nodeEnvironment(): Environment {
  return {
    cwd: process.cwd(),
    stdout: outputTo(process.stdout),
    stderr: outputTo(process.stderr),
    files: nodeFiles,
    clock: () => performance.now(),
    planner: { planCutting, verifyPlan },
  };
}

export const nodeFiles: Files = {
  async read(path) {
    return new TextDecoder('utf-8', { fatal: true }).decode(await readFile(path));
  },
  write: (path, text) => writeFile(path, text),
  rename: (from, to) => rename(from, to),
  remove: (path) => rm(path, { force: true }),
  async makeFolder(path) {
    await mkdir(path, { recursive: true });
  },
  list: (path) => readdir(path),
};

function outputTo(stream: NodeJS.WriteStream): Output {
  // A reader that leaves early, such as `head`, is no fault.
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  return {
    isTerminal: stream.isTTY === true,
    write: (text) => {
      stream.write(text);
    },
  };
}
