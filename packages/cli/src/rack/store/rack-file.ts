import {
  closeSync,
  constants,
  copyFileSync,
  existsSync,
  fstatSync,
  linkSync,
  mkdirSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { RackError } from '../rack-error.js';
import { MIGRATIONS, NEWEST_VERSION } from './migrations.js';
import { errorCode, tellingErrors } from './told-errors.js';

export type Connection = Database.Database;

/** Tells our files from others that SQLite made: "Rack" in ASCII. */
const APPLICATION_ID = 0x5261636b;
/** Milliseconds that one waits for another's change. */
const PATIENCE = 60_000;

/** Whether there is anything at the path. */
export function isThere(path: string): boolean {
  return tellingErrors(path, () => statSync(path, { throwIfNoEntry: false }) !== undefined);
}

/**
 * Makes a rack with nothing on it, unless another program makes one first. It is
 * made beside its place and put there whole, so that no half of one is ever seen.
 */
export function createRackFile(path: string, id: string): void {
  tellingErrors(path, () => {
    makeFolder(dirname(path));
    const partial = join(dirname(path), `.${basename(path)}.${process.pid}.partial`);
    rmSync(partial, { force: true });
    try {
      const connection = new Database(partial);
      try {
        layOutRack(connection, id);
      } finally {
        connection.close();
      }
      putInPlace(partial, path);
    } finally {
      for (const end of ['', '-wal', '-shm']) rmSync(`${partial}${end}`, { force: true });
    }
  });
}

/** Makes an empty database a rack with nothing on it. */
export function layOutRack(connection: Connection, id: string): void {
  connection.pragma(`application_id = ${APPLICATION_ID}`);
  connection.pragma('journal_mode = WAL');
  connection.transaction(() => {
    for (const step of MIGRATIONS) connection.exec(step);
    connection.prepare('INSERT INTO rack VALUES (1, ?, 0)').run(id);
    connection.pragma(`user_version = ${NEWEST_VERSION}`);
  })();
}

/** Opens a rack that is there, and brings it to the newest version. */
export function openRackFile(path: string): Connection {
  return tellingErrors(path, () => {
    refuseTruncated(path);
    const connection = new Database(path, { fileMustExist: true, timeout: PATIENCE });
    try {
      if (connection.pragma('application_id', { simple: true }) !== APPLICATION_ID) {
        throw new RackError(
          'not a rack',
          `${path}: it is no rack of stripwright; name another file with --rack`,
        );
      }
      connection.pragma('synchronous = FULL');
      connection.pragma('foreign_keys = ON');
      migrate(connection, path);
      return connection;
    } catch (error) {
      connection.close();
      throw error;
    }
  });
}

const versionOf = (connection: Connection): number =>
  Number(connection.pragma('user_version', { simple: true }));

/** A copy of the older rack is kept beside it, whole, before anything of it changes. */
function migrate(connection: Connection, path: string): void {
  if (versionOf(connection) === NEWEST_VERSION) return;
  connection.exec('BEGIN IMMEDIATE');
  try {
    // Another program may have been quicker.
    const version = versionOf(connection);
    if (version > NEWEST_VERSION) {
      throw new RackError(
        'newer version',
        `${path}: a newer stripwright made this rack (version ${version}; this one reads up to ` +
          `${NEWEST_VERSION}); install the newer one`,
      );
    }
    if (version < NEWEST_VERSION) {
      keepBackup(path, version);
      for (const step of MIGRATIONS.slice(version)) connection.exec(step);
      connection.pragma(`user_version = ${NEWEST_VERSION}`);
    }
    connection.exec('COMMIT');
  } catch (error) {
    if (connection.inTransaction) connection.exec('ROLLBACK');
    throw error;
  }
}

/** The name of the copy that is kept of a rack of an older version. */
export const backupOf = (path: string, version: number): string =>
  `${path}.version-${version}.backup`;

function keepBackup(path: string, version: number): void {
  const backup = backupOf(path, version);
  const partial = `${backup}.partial`;
  rmSync(partial, { force: true });
  // By a connection of its own: SQLite copies nothing inside of a change.
  const reader = new Database(path, { fileMustExist: true, timeout: PATIENCE });
  try {
    reader.prepare('VACUUM INTO ?').run(partial);
  } finally {
    reader.close();
  }
  renameSync(partial, backup);
}

/**
 * SQLite reads a file that lost its end until it comes to what is missing. Without a
 * write-ahead log that could hold the rest, the length that its head tells must be there.
 */
function refuseTruncated(path: string): void {
  const log = statSync(`${path}-wal`, { throwIfNoEntry: false });
  if (log !== undefined && log.size > 0) return;
  const head = Buffer.alloc(32);
  const file = openSync(path, 'r');
  try {
    const read = readSync(file, head, 0, head.length, 0);
    const { size } = fstatSync(file);
    // The format: page size at byte 16 (1 stands for 65536), pages at byte 28; big-endian.
    const pageSize = head.readUInt16BE(16) === 1 ? 65_536 : head.readUInt16BE(16);
    const isSqlite = head.toString('latin1', 0, 16) === 'SQLite format 3\0';
    if (read === head.length && isSqlite && size < pageSize * head.readUInt32BE(28)) {
      throw new RackError(
        'damaged',
        `${path}: the end of the file is missing; put a copy of it that is whole in its place`,
      );
    }
  } finally {
    closeSync(file);
  }
}

/** Puts a new file where none is yet; where there is one by now, that one stays. */
function putInPlace(partial: string, path: string): void {
  try {
    linkSync(partial, path);
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return;
    // Some file systems have no links.
    if (existsSync(path)) return;
    copyFileSync(partial, path, constants.COPYFILE_EXCL);
  }
}

/** Makes a folder and those above it; see `makeFolder` of the environment for why not recursively. */
function makeFolder(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory()) return;
  try {
    mkdirSync(path);
  } catch (error) {
    if (errorCode(error) === 'EEXIST' && statSync(path).isDirectory()) return;
    if (errorCode(error) !== 'ENOENT' || dirname(path) === path) throw error;
    makeFolder(dirname(path));
    mkdirSync(path);
  }
}
