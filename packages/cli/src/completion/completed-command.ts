import type { Command } from '../commands/command.js';
import { OPTION_WORDS, SUBJECT_WORDS } from './option-words.js';

/** What can follow a command on its line. */
export interface CompletedCommand {
  /** That name it. */
  readonly words: readonly string[];
  readonly summary: string;
  readonly options: readonly CompletedOption[];
  /** What it works on: words, a file where there is no list of them, or nothing. */
  readonly subject: 'none' | 'file' | readonly string[];
}

export interface CompletedOption {
  /** With its hyphens. */
  readonly name: string;
  readonly summary: string;
  /** What goes after it: words, a text or a file, or nothing. */
  readonly takes: 'nothing' | 'text' | readonly string[];
}

const HELP: CompletedOption = { name: '--help', summary: 'print its help', takes: 'nothing' };

/** @param words that name the command, such as its name alone */
export function completedCommand(words: readonly string[], command: Command): CompletedCommand {
  const options = Object.entries(command.options).map(
    ([key, { type, describe }]): CompletedOption => ({
      name: `--${key}`,
      summary: describe ?? '',
      takes: type === 'boolean' ? 'nothing' : (OPTION_WORDS[key] ?? 'text'),
    }),
  );
  const { subject, summary } = command;
  return {
    words,
    summary,
    options: [...options, HELP],
    subject: subject === undefined ? 'none' : (SUBJECT_WORDS[subject.name] ?? 'file'),
  };
}

/** The words that can follow each beginning of a command: `''` for none yet. */
export function nextWords(
  commands: readonly CompletedCommand[],
): ReadonlyMap<string, readonly { readonly word: string; readonly summary: string }[]> {
  const next = new Map<string, { readonly word: string; readonly summary: string }[]>();
  for (const { words, summary } of commands) {
    words.forEach((word, index) => {
      const before = words.slice(0, index).join(' ');
      const known = next.get(before) ?? [];
      next.set(before, known);
      const isWhole = index === words.length - 1;
      if (!known.some((one) => one.word === word)) {
        known.push({ word, summary: isWhole ? summary : '' });
      }
    });
  }
  return next;
}
