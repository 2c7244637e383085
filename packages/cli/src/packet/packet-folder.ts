import { dirname, join, resolve } from 'node:path';
import type { Environment, Files } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import { fileReason } from '../file-reason.js';
import { isOwnName, PLAN_NAME } from './packet-names.js';
import {
  finishPacket,
  isPartOfWriting,
  isToBeFinished,
  type PacketFile,
  putPacket,
} from './whole-packet.js';

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
  const foreign = names.filter((name) => !isPartOfWriting(name));
  if (isToBeFinished(names)) return;
  if (foreign.length === 0 || (await holdsPlan(folder, foreign, files))) return;
  throw new CommandError(
    EXIT.badInput,
    `${shown}: the folder is not empty and holds no plan of stripwright; ` +
      'name a new folder with --out, or empty this one',
  );
}

/**
 * Writes the files, all of them or none, in place of those of an older packet.
 * @throws CommandError that says what to do; the older packet is then as it was
 */
export async function writePacket(
  folder: string,
  shown: string,
  packet: readonly PacketFile[],
  files: Files,
): Promise<void> {
  try {
    await putPacket(folder, packet, isOwnName, files);
  } catch (error) {
    throw folderError(shown, error);
  }
}

/**
 * Finishes a packet whose writing was broken off, before it is read.
 * @param shown the path of one of its files as the user gave it
 * @throws CommandError
 */
export async function finishPacketOf(
  shown: string,
  { cwd, files }: Pick<Environment, 'cwd' | 'files'>,
): Promise<void> {
  const folder = dirname(resolve(cwd, shown));
  let names: readonly string[];
  try {
    names = await files.list(folder);
  } catch {
    // Whoever reads the file tells why it cannot be read.
    return;
  }
  if (!names.some(isPartOfWriting)) return;
  try {
    await finishPacket(folder, files);
  } catch (error) {
    throw folderError(dirname(shown), error);
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
