import { dirname, resolve } from 'node:path';
import type { Environment } from '../environment.js';
import { accept, type Reading, refuse } from '../faults/reading.js';
import { fileReason } from '../file-reason.js';
import { fieldOf } from './order-context.js';
import { parseYaml } from './yaml-tree.js';

/** The texts of drawings by their names in an order, or why they cannot be read. */
export type Drawings = ReadonlyMap<string, Reading<string>>;

/**
 * Reads the drawings that an order names, each once. Their paths start from the
 * order's folder.
 *
 * @param text the order
 * @param file its name
 */
export async function readDrawings(
  text: string,
  file: string,
  { cwd, files }: Environment,
): Promise<Drawings> {
  const folder = dirname(resolve(cwd, file));
  const drawings = new Map<string, Reading<string>>();
  for (const name of drawingsNamed(text)) {
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

/** The names of the drawings in an order; none where it is not readable, which is told elsewhere. */
export function drawingsNamed(text: string): ReadonlySet<string> {
  const yaml = parseYaml(text);
  const items = yaml.ok ? fieldOf(yaml.tree.value, 'items') : undefined;
  if (!Array.isArray(items)) return new Set();
  const written = items.map((item) => fieldOf(item, 'svg'));
  return new Set(
    written.flatMap((name) =>
      typeof name === 'string' && name.trim() !== '' ? [name.trim()] : [],
    ),
  );
}
