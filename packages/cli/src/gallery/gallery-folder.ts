import type { Files } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import { fileReason } from '../file-reason.js';
import { isPartOfWriting } from '../packet/whole-packet.js';

/**
 * Makes sure that a folder may be written to: it is new, empty, or holds nothing but files that
 * this gallery will replace.
 *
 * @param folder its absolute path
 * @param shown its path as the user gave it
 * @param written names of the files to be written
 * @throws CommandError that says what to do
 */
export async function checkGalleryFolder(
  folder: string,
  shown: string,
  written: readonly string[],
  files: Files,
): Promise<void> {
  const names = await namesIn(folder, shown, files);
  const foreign = names.find((name) => !written.includes(name) && !isPartOfWriting(name));
  if (foreign === undefined) return;
  throw new CommandError(
    EXIT.badInput,
    `${shown}: the folder holds ${foreign}, which is no part of the gallery; ` +
      'name a new folder with --out, or empty this one',
  );
}

async function namesIn(folder: string, shown: string, files: Files): Promise<readonly string[]> {
  try {
    return await files.list(folder);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return [];
    const reason = fileReason(error);
    if (reason === undefined) throw error;
    throw new CommandError(EXIT.badInput, `${shown}: cannot be written to: ${reason}`);
  }
}
