/** A path as a shell takes it. */
export function quoted(path: string): string {
  return /^[\w./-]+$/.test(path) && !path.startsWith('-')
    ? path
    : `'${path.replaceAll("'", "'\\''")}'`;
}
