/** The words of a command line, with blanks kept inside double quotes, as a shell has them. */
export function shellWords(line: string): readonly string[] {
  return [...line.matchAll(/(?:"([^"]*)"|[^\s"])+/g)].map(([word]) => word.replaceAll('"', ''));
}
