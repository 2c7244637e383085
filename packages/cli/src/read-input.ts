import { resolve } from 'node:path';
import type { Environment } from './environment.js';
import { DocumentError, type Fault } from './faults/fault.js';
import { faultText } from './faults/fault-text.js';
import { fileReason } from './file-reason.js';

/**
 * Reads a file that the user named.
 * @throws DocumentError where it cannot be read
 */
export async function readInput(file: string, { cwd, files }: Environment): Promise<string> {
  try {
    return await files.read(resolve(cwd, file));
  } catch (error) {
    const reason = fileReason(error);
    if (reason === undefined) throw error;
    const fault: Fault = { complaint: { code: 'unreadable', reason }, path: [] };
    throw new DocumentError(file, [fault], faultText(file, fault));
  }
}
