import { type CompletedCommand, nextWords } from './completed-command.js';

/** Completion for zsh, as a file on its path of functions or read by `source`. */
export function zshCompletion(commands: readonly CompletedCommand[]): string {
  const next = nextWords(commands);
  const named = [
    ...new Set([
      ...[...next.keys()].filter((words) => words !== ''),
      ...commands.map(({ words }) => words.join(' ')),
    ]),
  ];
  return `#compdef stripwright
# Completion of stripwright for zsh.
_stripwright() {
  local named= part before=$words[CURRENT-1]
  local -a found
  for part in "\${(@)words[2,CURRENT-1]}"; do
    case "$named $part" in
${named.map((words) => `      (${quoted(` ${words}`)}) named=${quoted(` ${words}`)} ;;`).join('\n')}
    esac
  done
  case "$named $before" in
${optionCases(commands).join('\n')}
  esac
  case $named in
${groupCases(next).join('\n')}
${commands.flatMap(commandCase).join('\n')}
  esac
}
if [[ $zsh_eval_context[-1] == loadautofunc ]]; then
  _stripwright "$@"
else
  compdef _stripwright stripwright
fi
`;
}

function optionCases(commands: readonly CompletedCommand[]): readonly string[] {
  return commands.flatMap(({ words, options }) =>
    options.flatMap(({ name, takes }) => {
      if (takes === 'nothing') return [];
      const at = `    (${quoted(` ${words.join(' ')} ${name}`)})`;
      const what = takes === 'text' ? '_files' : `compadd -- ${takes.join(' ')}`;
      return [`${at} ${what}; return ;;`];
    }),
  );
}

function groupCases(next: ReturnType<typeof nextWords>): readonly string[] {
  return [...next].map(([named, words]) => {
    const before = named === '' ? '' : ` ${named}`;
    const found = words.map(({ word, summary }) => described(word, summary)).join(' ');
    return `    (${quoted(before)}) found=(${found}); _describe command found ;;`;
  });
}

function commandCase({ words, options, subject }: CompletedCommand): readonly string[] {
  const found = options.map(({ name, summary }) => described(name, summary)).join(' ');
  const what =
    subject === 'none' ? ':' : subject === 'file' ? '_files' : `compadd -- ${subject.join(' ')}`;
  return [
    `    (${quoted(` ${words.join(' ')}`)})`,
    '      if [[ $PREFIX == -* ]]; then',
    `        found=(${found}); _describe -o option found`,
    `      else ${what}; fi ;;`,
  ];
}

function described(word: string, summary: string): string {
  return quoted(summary === '' ? word : `${word}:${summary}`);
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
