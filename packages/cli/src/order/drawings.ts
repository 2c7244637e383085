import { dirname, resolve } from 'node:path';
import type { Environment } from '../environment.js';
import { accept, type Reading, refuse } from '../faults/reading.js';
import { fileReason } from '../file-reason.js';
import { fieldOf } from './order-context.js';
import type { RawValue } from './yaml-tree.js';

/** The texts of drawings by their names in an order, or why they cannot be read. */
export type Drawings = ReadonlyMap<string, Reading<string>>;

/**
 * Reads the drawings that an order names, each once. Their paths start from the
 * order's folder.
 *
 * @param order as written, its items in it
 * @param file its name
 */
export async function readDrawings(
  order: RawValue,
  file: string,
  { cwd, files }: Environment,
): Promise<Drawings> {
  const folder = dirname(resolve(cwd, file));
  const drawings = new Map<string, Reading<string>>();
  for (const name of drawingsNamed(order)) {
    try {
      drawings.set(name, accept(await files.read(resolve(folder, name))));
    } catch (error) {
      const reason = fileReason(error);
      if (reason === undefined) throw error;
      drawings.set(name, refuse({ code: 'unreadable', reason }));
    }
  }
  return drawings;
}

/** The names of the drawings in an order. */
function drawingsNamed(order: RawValue): ReadonlySet<string> {
  const items = fieldOf(order, 'items');
  if (!Array.isArray(items)) return new Set();
  const written = items.map((item) => fieldOf(item, 'svg'));
  return new Set(
    written.flatMap((name) =>
      typeof name === 'string' && name.trim() !== '' ? [name.trim()] : [],
    ),
  );
}
