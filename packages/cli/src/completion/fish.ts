import { type CompletedCommand, nextWords } from './completed-command.js';

/** Completion for fish, as a file in its folder of completions or read by `source`. */
export function fishCompletion(commands: readonly CompletedCommand[]): string {
  const next = nextWords(commands);
  const groups = [...next].flatMap(([named, words]) => {
    const rest = words.map(({ word }) => word);
    const condition =
      named === ''
        ? `not __fish_seen_subcommand_from ${rest.join(' ')}`
        : `${seen(named.split(' '))}; and not __fish_seen_subcommand_from ${rest.join(' ')}`;
    return words.map(
      ({ word, summary }) => `${complete(condition)} -f -a ${word}${described(summary)}`,
    );
  });
  return [
    '# Completion of stripwright for fish.',
    'complete -c stripwright -f',
    ...groups,
    ...commands.flatMap(ofCommand),
    '',
  ].join('\n');
}

function ofCommand({ words, options, subject }: CompletedCommand): readonly string[] {
  const start = complete(seen(words));
  const what =
    subject === 'none'
      ? []
      : [subject === 'file' ? `${start} -F` : `${start} -f -a ${quoted(subject.join(' '))}`];
  const own = options.map(({ name, summary, takes }) => {
    const value =
      takes === 'nothing' ? '' : takes === 'text' ? ' -r -F' : ` -x -a ${quoted(takes.join(' '))}`;
    return `${start} -l ${name.slice(2)}${value}${described(summary)}`;
  });
  return [...what, ...own];
}

function seen(words: readonly string[]): string {
  return words.map((word) => `__fish_seen_subcommand_from ${word}`).join('; and ');
}

function complete(condition: string): string {
  return `complete -c stripwright -n ${quoted(condition)}`;
}

function described(summary: string): string {
  return summary === '' ? '' : ` -d ${quoted(summary)}`;
}

function quoted(text: string): string {
  return `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
}
