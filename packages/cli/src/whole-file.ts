import { basename, dirname, join } from 'node:path';
import type { Files } from './environment.js';
import { CommandError, EXIT } from './exit-code.js';
import { fileReason } from './file-reason.js';

/** A file to be written, and how to tell an older one of its kind. */
export interface WholeFile {
  /** Its absolute path. */
  readonly path: string;
  /** Its path as the user gave it. */
  readonly shown: string;
  readonly text: string;
  /** What such a file is, for the refusal to replace another: `a drawing of a rack`. */
  readonly kind: string;
  /** Whether a file that is there may be replaced. */
  isOurs(text: string): boolean;
}

/**
 * Writes a file whole or not at all. One that is there is replaced if it is of the same kind.
 * @throws CommandError that says what to do
 */
export async function writeWhole(file: WholeFile, files: Files): Promise<void> {
  const { path, shown, text } = file;
  const partial = join(dirname(path), `.${basename(path)}.partial`);
  try {
    await refuseForeign(file, files);
    await files.makeFolder(dirname(path));
    try {
      await files.write(partial, text);
      await files.rename(partial, path);
    } catch (error) {
      await files.remove(partial);
      throw error;
    }
  } catch (error) {
    const reason = fileReason(error);
    if (reason === undefined) throw error;
    throw new CommandError(EXIT.badInput, `${shown}: cannot be written: ${reason}`);
  }
}

async function refuseForeign({ path, shown, kind, isOurs }: WholeFile, files: Files) {
  let there: string;
  try {
    there = await files.read(path);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ENOENT') return;
    // Whatever is no text is nothing of ours.
    if (code !== 'ERR_ENCODING_INVALID_ENCODED_DATA') throw error;
    there = '';
  }
  if (isOurs(there)) return;
  throw new CommandError(
    EXIT.badInput,
    `${shown}: a file is there that is not ${kind}; name another, or remove it`,
  );
}
