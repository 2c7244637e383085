import { createInterface, type Interface } from 'node:readline';
import type { Ask } from './environment.js';

/**
 * Asks on one stream and takes lines from another, one for each question. Lines that come
 * before they are asked for, as when several are pasted, wait for their question. The input
 * is let go of between questions, so that a program that asks no more can end.
 */
export function askOn(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): Ask {
  const early: string[] = [];
  let lines: Interface | undefined;
  let waiting: ((line: string | undefined) => void) | undefined;
  let isOver = false;
  const answer = (line: string | undefined) => {
    waiting?.(line);
    waiting = undefined;
  };
  const open = () => {
    // A terminal shows what is typed by itself, and Ctrl-C ends the program as ever.
    const opened = createInterface({ input, terminal: false });
    opened.on('line', (line) => {
      if (waiting === undefined) early.push(line);
      else answer(line);
      opened.pause();
    });
    opened.on('close', () => {
      isOver = true;
      answer(undefined);
    });
    return opened;
  };
  return (question) => {
    output.write(question);
    const line = early.shift();
    if (line !== undefined || isOver) return Promise.resolve(line);
    return new Promise((resolve) => {
      waiting = resolve;
      lines ??= open();
      lines.resume();
    });
  };
}
