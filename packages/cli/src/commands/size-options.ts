import type { OutlineFamily } from '@stripwright/strip-geometry';
import type { Options } from 'yargs';
import { textOption } from './command.js';

/** `across flats` is given as `--across-flats`. */
export function optionName(field: string): string {
  return `--${optionKey(field)}`;
}

export function optionKey(field: string): string {
  return field.replaceAll(' ', '-');
}

/** An option for every size that any family declares. */
export function sizeOptions(families: readonly OutlineFamily[]): Record<string, Options> {
  const users = new Map<string, string[]>();
  for (const { name, sizes } of families) {
    for (const size of sizes) {
      users.set(size.name, [...(users.get(size.name) ?? []), name]);
    }
  }
  return Object.fromEntries(
    [...users].map(([size, names]) => [
      optionKey(size),
      textOption(`of: ${names.join(', ')}`, 'Sizes of the outline:'),
    ]),
  );
}
