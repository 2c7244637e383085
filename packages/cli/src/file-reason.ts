/** Why a file or folder cannot be used, in plain words, or `undefined` for errors that are none of these. */
export function fileReason(error: unknown): string | undefined {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return Object.hasOwn(REASONS, code) ? REASONS[code] : undefined;
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder; check the spelling of the path',
  EACCES: 'permission is denied; check who may use it',
  EPERM: 'permission is denied; check who may use it',
  EISDIR: 'it is a folder; name a file in it',
  ENOTDIR: 'part of the path is a file, not a folder',
  EEXIST: 'a file of that name is in the way; name a folder',
  ENAMETOOLONG: 'the path is too long',
  ELOOP: 'its links lead in a circle',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk can only be read',
  EMFILE: 'too many files are open',
  ERR_INVALID_ARG_VALUE: 'the path has characters that no path can have',
  ERR_ENCODING_INVALID_ENCODED_DATA: 'it is not text in UTF-8',
  ERR_STRING_TOO_LONG: 'it is too large',
  ERR_FS_FILE_TOO_LARGE: 'it is too large',
};
