import { RackError, type RackErrorCode } from '../rack-error.js';

/** What SQLite's and the system's error codes, or their beginnings, mean to the user of a rack. */
const MEANINGS: readonly (readonly [RegExp, RackErrorCode, string])[] = [
  [/^(SQLITE_FULL|ENOSPC|EDQUOT)/, 'disk full', 'the disk is full; make room, then try again'],
  [
    /^(SQLITE_READONLY|SQLITE_PERM|EROFS)/,
    'cannot be written',
    'it can only be read; check who may write to it and to its folder',
  ],
  [
    /^(EACCES|EPERM|SQLITE_AUTH)/,
    'cannot be opened',
    'permission is denied; check who may use it and its folder',
  ],
  [/^(SQLITE_NOTADB)/, 'not a rack', 'it is no rack of stripwright; name another file with --rack'],
  [
    /^(SQLITE_CORRUPT)/,
    'damaged',
    'the file is damaged; put a copy of it that is whole in its place',
  ],
  [/^(SQLITE_BUSY|SQLITE_LOCKED)/, 'busy', 'another program keeps it busy; try again'],
  [/^ENOTDIR/, 'cannot be opened', 'part of its path is a file, not a folder'],
  [/^EISDIR/, 'cannot be opened', 'it is a folder; name a file in it'],
  [/^ENAMETOOLONG/, 'cannot be opened', 'the path is too long'],
  [/^ENOENT/, 'cannot be opened', 'its folder cannot be made there; check the path'],
  [
    /^(SQLITE_CANTOPEN|SQLITE_IOERR_(SHM|LOCK)|SQLITE_PROTOCOL|ERR_INVALID_ARG)/,
    'cannot be opened',
    'it cannot be opened; check the path, and who may use its folder',
  ],
  [
    /^(SQLITE_IOERR|EIO|EFBIG)/,
    'cannot be written',
    'the disk cannot be read or written there; check it, then try again',
  ],
];

/**
 * Runs what touches a rack's file.
 * @param shown the path, for messages
 * @throws RackError in place of errors of SQLite and of the file system; all others as they are
 */
export function tellingErrors<T>(shown: string, touch: () => T): T {
  try {
    return touch();
  } catch (error) {
    throw toldError(shown, error);
  }
}

function toldError(shown: string, error: unknown): unknown {
  const code = errorCode(error);
  if (code === undefined || error instanceof RackError) return error;
  const meaning = MEANINGS.find(([pattern]) => pattern.test(code));
  if (meaning === undefined) return error;
  const [, kind, words] = meaning;
  return new RackError(kind, `${shown}: ${words}`, { cause: error });
}

/** The code of an error of SQLite or of the system. */
export function errorCode(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}
