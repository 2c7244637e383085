import { join } from 'node:path';
import type { Files } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import { fileReason } from '../file-reason.js';

/** The folder that a plan's files go to. */
export const PLAN_NAME = 'plan.json';
export const JOB_SHEET_NAME = 'job-sheet.html';
export const cutMapName = (number: number) => `cut-map-${number}.svg`;
const CUT_MAP = /^cut-map-\d+\.svg$/;
const PARTIAL =
  /^\.(?:plan\.json|job-sheet\.html|cut-map-\d+\.svg|(?:cuts|pieces|purchases|quote)\.csv)\.partial$/;

/** A file of the packet. */
export interface PacketFile {
  readonly name: string;
  readonly text: string;
}

/**
 * Makes sure that a folder may be written to: it is new, empty, or holds an
 * older plan of ours.
 *
 * @param folder its absolute path
 * @param shown its path as the user gave it
 * @throws CommandError that says what to do
 */
export async function checkPacketFolder(
  folder: string,
  shown: string,
  files: Files,
): Promise<void> {
  let names: readonly string[];
  try {
    names = await files.list(folder);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return;
    throw folderError(shown, error);
  }
  const foreign = names.filter((name) => !PARTIAL.test(name));
  if (foreign.length === 0 || (await holdsPlan(folder, foreign, files))) return;
  throw new CommandError(
    EXIT.badInput,
    `${shown}: the folder is not empty and holds no plan of stripwright; ` +
      'name a new folder with --out, or empty this one',
  );
}

/**
 * Writes the files, each whole or not at all, then removes cut maps of an older
 * plan. The plan comes last, so that it never speaks of files that are not there.
 */
export async function writePacket(
  folder: string,
  shown: string,
  packet: readonly PacketFile[],
  files: Files,
): Promise<void> {
  const partial = (name: string) => join(folder, `.${name}.partial`);
  try {
    await files.makeFolder(folder);
    try {
      for (const { name, text } of packet) await files.write(partial(name), text);
      for (const { name } of packet) await files.rename(partial(name), join(folder, name));
    } catch (error) {
      for (const { name } of packet) await files.remove(partial(name));
      throw error;
    }
    const current = new Set(packet.map(({ name }) => name));
    for (const name of await files.list(folder)) {
      const stale = (CUT_MAP.test(name) && !current.has(name)) || PARTIAL.test(name);
      if (stale) await files.remove(join(folder, name));
    }
  } catch (error) {
    throw folderError(shown, error);
  }
}

async function holdsPlan(folder: string, names: readonly string[], files: Files): Promise<boolean> {
  if (!names.includes(PLAN_NAME)) return false;
  try {
    const plan: unknown = JSON.parse(await files.read(join(folder, PLAN_NAME)));
    const fields = ['schemaVersion', 'layouts', 'blanks', 'buy', 'bound'];
    return typeof plan === 'object' && plan !== null && fields.every((name) => name in plan);
  } catch {
    // Unreadable or not JSON: whatever it is, it is not ours to replace.
    return false;
  }
}

function folderError(shown: string, error: unknown): unknown {
  const reason = fileReason(error);
  if (reason === undefined) return error;
  return new CommandError(EXIT.badInput, `${shown}: cannot be written to: ${reason}`);
}
