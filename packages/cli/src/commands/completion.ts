import { bashCompletion } from '../completion/bash.js';
import { type CompletedCommand, completedCommand } from '../completion/completed-command.js';
import { fishCompletion } from '../completion/fish.js';
import { zshCompletion } from '../completion/zsh.js';
import { CommandError, EXIT } from '../exit-code.js';
import { complaintText } from '../faults/fault-text.js';
import { readChoice } from '../order/fields.js';
import { type AnyCommand, type Command, runnable } from './command.js';

type Shell = 'bash' | 'zsh' | 'fish';

const SCRIPTS: Readonly<Record<Shell, (commands: readonly CompletedCommand[]) => string>> = {
  bash: bashCompletion,
  zsh: zshCompletion,
  fish: fishCompletion,
};
const SHELLS: readonly Shell[] = ['bash', 'zsh', 'fish'];

/**
 * `stripwright completion`: what a shell reads to complete commands, options, outlines.
 * @param others all commands but this, asked for when it runs
 */
export function completionOf(others: readonly AnyCommand[]): Command {
  const completion: Command = {
    name: 'completion',
    subject: { name: 'shell', meaning: 'bash, zsh or fish' },
    summary: 'print what a shell needs to complete commands, options and outlines',
    options: {},
    examples: [
      { command: 'stripwright completion bash', meaning: 'for bash' },
      { command: 'stripwright completion fish', meaning: 'for fish' },
    ],
    epilogue: [
      'Put this into the file that your shell reads at its start:',
      '  bash  source <(stripwright completion bash)',
      '  zsh   source <(stripwright completion zsh), after compinit',
      '  fish  stripwright completion fish | source',
    ],
    async run(given, { stdout }) {
      const shell = readChoice(given.subject, SHELLS);
      if (!shell.ok) {
        const message = complaintText('the shell', shell.complaint, given.subject);
        throw new CommandError(EXIT.badInput, message);
      }
      const all = runnable([...others, completion]).map(({ words, command }) =>
        completedCommand(words, command),
      );
      stdout.write(SCRIPTS[shell.value](all));
      return EXIT.done;
    },
  };
  return completion;
}
