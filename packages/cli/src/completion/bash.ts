import { type CompletedCommand, nextWords } from './completed-command.js';

/** Completion for bash, read by `source`. All words in it are letters, figures and hyphens. */
export function bashCompletion(commands: readonly CompletedCommand[]): string {
  const next = nextWords(commands);
  return `# Completion of stripwright for bash.
_stripwright() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD - 1]}
  local named= part words= options=
  # --units=mm comes as three words.
  if [[ $word == = ]]; then
    word=
  elif [[ $before == = ]]; then
    before=\${COMP_WORDS[COMP_CWORD - 2]}
  fi
  for part in "\${COMP_WORDS[@]:1:COMP_CWORD-1}"; do
    case "$named $part" in
${beginnings(next, commands)
  .map((named) => `      ' ${named}') named=' ${named}' ;;`)
  .join('\n')}
    esac
  done
  COMPREPLY=()
  case "$named $before" in
${optionCases(commands).join('\n')}
  esac
  if [[ -z $words ]]; then
    case $named in
${subjectCases(commands, next).join('\n')}
    esac
    if [[ $word == -* ]]; then words=$options; fi
  fi
  if [[ -z $words ]]; then
    compopt -o default 2>/dev/null
    return
  fi
  COMPREPLY=($(compgen -W "$words" -- "$word"))
}
complete -F _stripwright stripwright
`;
}

/** Words that name commands, and the beginnings of those of several words. */
function beginnings(
  next: ReturnType<typeof nextWords>,
  commands: readonly CompletedCommand[],
): readonly string[] {
  const groups = [...next.keys()].filter((named) => named !== '');
  return [...new Set([...groups, ...commands.map(({ words }) => words.join(' '))])];
}

function optionCases(commands: readonly CompletedCommand[]): readonly string[] {
  return commands.flatMap(({ words, options }) =>
    options.flatMap(({ name, takes }) => {
      if (takes === 'nothing') return [];
      const at = `    ' ${words.join(' ')} ${name}')`;
      if (takes === 'text') return [`${at} compopt -o default 2>/dev/null; return ;;`];
      return [`${at} words='${takes.join(' ')}' ;;`];
    }),
  );
}

function subjectCases(
  commands: readonly CompletedCommand[],
  next: ReturnType<typeof nextWords>,
): readonly string[] {
  const groups = [...next].map(([named, words]) => {
    const before = named === '' ? '' : ` ${named}`;
    const own = words.map(({ word }) => word).join(' ');
    return `      '${before}') words='${own}' options='--help --version' ;;`;
  });
  const own = commands.map(({ words, options, subject }) => {
    const names = options.map(({ name }) => name).join(' ');
    const values = typeof subject === 'string' ? '' : `words='${subject.join(' ')}' `;
    return `      ' ${words.join(' ')}') ${values}options='${names}' ;;`;
  });
  return [...groups, ...own];
}
