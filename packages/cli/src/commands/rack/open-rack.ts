import { resolve } from 'node:path';
import type { Environment } from '../../environment.js';
import { accept, type Reading, refuse } from '../../faults/reading.js';
import type { Rack } from '../../rack/rack.js';
import { textOption } from '../command.js';
import type { OptionReader } from '../option-reader.js';

const FILE = 'the name of a file';

/** Which rack is meant. */
export const RACK_OPTION = {
  rack: textOption('the file that the rack is kept in; your usual rack when left out'),
};

/** The absolute path of the rack that is meant. */
export function readRackPath(options: OptionReader, { cwd, usualRack }: Environment): string {
  const named = options.optional('rack', readFileName);
  return named === undefined ? usualRack : resolve(cwd, named);
}

export function readFileName(text: string): Reading<string> {
  return text === '' ? refuse({ code: 'missing', hint: FILE }) : accept(text);
}

/**
 * Opens a rack, which is made where there is none, for as long as it is used.
 * @throws RackError
 */
export async function withRack<T>(
  path: string,
  { racks }: Environment,
  use: (rack: Rack) => T | Promise<T>,
): Promise<T> {
  const rack = racks.open(path);
  try {
    return await use(rack);
  } finally {
    rack.close();
  }
}
