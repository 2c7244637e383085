import { join } from 'node:path';
import type { Files } from '../environment.js';

// A packet is many files, and there is no way to put many files in the place of others in
// one step. So they are all written under other names first; then one file, put there in
// one step, tells that they are complete; then they take their names. A program that is
// killed before that file leaves the old packet, and one that is killed after it leaves
// the new packet to be finished by whoever comes next.

/** A file of the packet. */
export interface PacketFile {
  readonly name: string;
  readonly text: string | Uint8Array;
}

const PARTIAL = /^\..+\.stripwright-partial$/;
const partialName = (name: string) => `.${name}.stripwright-partial`;
/** Names the files that are complete, and have to take their names. */
const COMPLETE = '.stripwright-complete';

/** Whether a file is one that the writing of a packet leaves when it is broken off. */
export function isPartOfWriting(name: string): boolean {
  return name === COMPLETE || PARTIAL.test(name);
}

/** Whether a packet among these files was complete and only has to take its names. */
export function isToBeFinished(names: readonly string[]): boolean {
  return names.includes(COMPLETE);
}

/**
 * Puts the files into a folder, all or none, and takes away those of an older packet.
 * @param isStale whether a file that is there and not among them is of an older packet
 * @throws Node's errors; the older packet is then as it was
 */
export async function putPacket(
  folder: string,
  packet: readonly PacketFile[],
  isStale: (name: string) => boolean,
  files: Files,
): Promise<void> {
  await files.makeFolder(folder);
  await finishPacket(folder, files);
  const names = packet.map(({ name }) => name);
  const stale = (await files.list(folder)).filter((name) => isStale(name) && !names.includes(name));
  const todo: Todo = { names, stale };
  try {
    for (const { name, text } of packet) await files.write(join(folder, partialName(name)), text);
    await files.write(join(folder, partialName(COMPLETE)), JSON.stringify(todo));
    await files.rename(join(folder, partialName(COMPLETE)), join(folder, COMPLETE));
  } catch (error) {
    for (const name of [...names, COMPLETE]) await files.remove(join(folder, partialName(name)));
    throw error;
  }
  await finishPacket(folder, files);
}

interface Todo {
  readonly names: readonly string[];
  /** To be taken away. */
  readonly stale: readonly string[];
}

/**
 * Finishes what was broken off in a folder after all its files were complete, and clears
 * away what was broken off before. Does nothing to any other folder.
 */
export async function finishPacket(folder: string, files: Files): Promise<void> {
  const there = await files.list(folder);
  if (isToBeFinished(there)) {
    // One that a full disk or a lost current spoilt tells nothing: the older packet stands.
    const { names, stale } = todoIn(await files.read(join(folder, COMPLETE)));
    // Those that have taken their names already are no longer there under the others.
    for (const name of names.filter((one) => there.includes(partialName(one)))) {
      await files.rename(join(folder, partialName(name)), join(folder, name));
    }
    for (const name of stale) await files.remove(join(folder, name));
    await files.remove(join(folder, COMPLETE));
  }
  for (const name of await files.list(folder)) {
    if (PARTIAL.test(name)) await files.remove(join(folder, name));
  }
}

/** Names without a folder in them, whatever the file says. */
function todoIn(text: string): Todo {
  const read = parsed(text);
  const list = (key: string): readonly string[] => {
    const value: unknown = typeof read === 'object' && read !== null ? Reflect.get(read, key) : [];
    const names: readonly unknown[] = Array.isArray(value) ? value : [];
    return names.filter((name) => typeof name === 'string').filter((name) => !/[/\\]/.test(name));
  };
  return { names: list('names'), stale: list('stale') };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
