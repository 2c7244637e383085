import { dirname, isAbsolute, join, resolve } from 'node:path';
import type { Environment } from '../environment.js';
import { accept, refuse } from '../faults/reading.js';
import { fileReason } from '../file-reason.js';
import type { TableFile } from './item-table.js';
import { fieldOf } from './order-context.js';
import { parseYaml } from './yaml-tree.js';

/**
 * Reads the table of an order's items: the one that the user names, or else the one that
 * the order names, its path from the folder of the order; undefined where there is none.
 *
 * @param text the order
 * @param file its name
 */
export async function readItemTable(
  text: string,
  file: string,
  named: string | undefined,
  { cwd, files }: Environment,
): Promise<TableFile | undefined> {
  const shown = named ?? tableNamed(text, file);
  const isOfOrder = named === undefined;
  if (shown === undefined) return undefined;
  try {
    return { file: shown, text: accept(await files.read(resolve(cwd, shown))), isOfOrder };
  } catch (error) {
    const reason = fileReason(error);
    if (reason === undefined) throw error;
    return { file: shown, text: refuse({ code: 'unreadable', reason }), isOfOrder };
  }
}

/** Its path as one would type it beside the order's. */
function tableNamed(text: string, file: string): string | undefined {
  const yaml = parseYaml(text);
  const items = yaml.ok ? fieldOf(yaml.tree.value, 'items') : undefined;
  if (typeof items !== 'string' || items.trim() === '') return undefined;
  const path = items.trim();
  return isAbsolute(path) ? path : join(dirname(file), path);
}
