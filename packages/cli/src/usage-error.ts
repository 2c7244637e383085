import { CommandError, EXIT } from './exit-code.js';
import { nearestSpelling } from './faults/nearest-spelling.js';

/**
 * What yargs found wrong with the command line, in our words and with the nearest right spelling.
 *
 * @param command the words that name the command, none where it is not known
 */
export function usageError(
  message: string,
  command: readonly string[],
  optionKeys: readonly string[],
): CommandError {
  const help = ['stripwright', ...command, '--help'].join(' ');
  const what = wordsFor(message, command.length > 0 ? 'action' : 'command', optionKeys);
  return new CommandError(
    EXIT.badInput,
    what.endsWith('?') ? `${what} See ${help}` : `${what}; see ${help}`,
  );
}

function wordsFor(
  message: string,
  wanted: 'command' | 'action',
  optionKeys: readonly string[],
): string {
  const line = message.split('\n')[0] ?? message;
  const unknown = /^Unknown arguments?: (.*)$/.exec(line);
  if (unknown?.[1] !== undefined) return unknownWords(unknown[1].split(', '), optionKeys);
  if (/^Not enough non-option arguments/.test(line)) return 'what to work on is missing';
  const valueless = /^Not enough arguments following: (.*)$/.exec(line);
  if (valueless?.[1] !== undefined) return `--${valueless[1]} needs a value after it`;
  const meant = /^Did you mean (.*)\?$/.exec(line);
  if (meant?.[1] !== undefined) return `no such ${wanted}; did you mean ${meant[1]}?`;
  return line;
}

function unknownWords(words: readonly string[], optionKeys: readonly string[]): string {
  const parts = words.map((word) => {
    const nearest = nearestSpelling(word, optionKeys);
    if (nearest !== undefined) return `unknown: ${word}; did you mean --${nearest}?`;
    // What a shell makes of --side 1 5/8.
    const fraction = /^\d+\/\d+$/.test(word);
    return fraction
      ? `unknown: ${word}; quote a length with a blank, "1 ${word}"`
      : `unknown: ${word}`;
  });
  return parts.join('; ');
}
