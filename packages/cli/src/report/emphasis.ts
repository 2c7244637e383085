import type { Output } from '../environment.js';

const BOLD = '\u001b[1m';
const BOLD_YELLOW = '\u001b[1;33m';
const PLAIN = '\u001b[0m';

/** What leads to things to think of before cutting. */
const WARNS = /^Before cutting/;

/**
 * Whether a terminal is to be written to in colour: where it is one and can, and its user
 * has not asked for none with NO_COLOR (no-color.org: set and not empty).
 */
export function wantsColour(
  isTerminal: boolean,
  variables: Readonly<Record<string, string | undefined>>,
): boolean {
  return isTerminal && (variables.NO_COLOR ?? '') === '' && variables.TERM !== 'dumb';
}

/**
 * The lines of a report with its headings in bold, and warnings in yellow too, where the
 * output takes colour. The words say everything without it.
 */
export function emphasised(lines: readonly string[], { colour }: Output): readonly string[] {
  if (colour !== true) return lines;
  return lines.map((line, index) => {
    if (!isHeading(lines, index)) return line;
    return `${WARNS.test(line) ? BOLD_YELLOW : BOLD}${line}${PLAIN}`;
  });
}

/** A line that begins a part, and is followed by something that is set in from it. */
function isHeading(lines: readonly string[], index: number): boolean {
  const line = lines[index] ?? '';
  const before = lines[index - 1] ?? '';
  const isSetIn = (text: string | undefined) => text?.startsWith('  ') === true;
  return (
    line !== '' && !isSetIn(line) && before === '' && (isSetIn(lines[index + 1]) || index === 0)
  );
}
