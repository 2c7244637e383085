import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../environment.test.support.js';
import { auditRack } from './audit.test.support.js';
import { offcutOf } from './planned-cutting.test.support.js';
import { RackError } from './rack-error.js';
import { sqliteRacks } from './sqlite-racks.js';
import { MIGRATIONS, NEWEST_VERSION } from './store/migrations.js';
import { backupOf } from './store/rack-file.js';

const program = fileURLToPath(
  new URL('../../dist/rack/strained-rack.test.support.js', import.meta.url),
);
const racks = sqliteRacks({ now: () => '2026-03-02T09:00:00.000Z', newId: () => 'id' });
const folder = temporaryFolder();
// Nobody must be able to come to it.
chmodSync(folder, 0o755);
let files = 0;
const newPath = () => {
  files++;
  mkdirSync(join(folder, `${files}`));
  return join(folder, `${files}`, 'rack.sqlite');
};

/** A rack with a few offcuts on it. */
function someRack(offcuts = 3): string {
  const path = newPath();
  const rack = racks.open(path);
  rack.add(Array.from({ length: offcuts }, () => offcutOf()));
  rack.close();
  return path;
}

function refusal(path: string): RackError {
  try {
    racks.open(path).close();
  } catch (error) {
    if (error instanceof RackError) return error;
    throw error;
  }
  throw new Error('It was opened.');
}

function inShell(script: string): Record<string, unknown> {
  const { stdout, stderr } = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
  expect(stderr).toBe('');
  return JSON.parse(stdout) as Record<string, unknown>;
}

describe('a file that is no rack', () => {
  const otherDatabase = () => {
    const path = newPath();
    const connection = new Database(path);
    connection.exec('CREATE TABLE recipe (name TEXT)');
    connection.close();
    return path;
  };
  const written = (text: string) => () => {
    const path = newPath();
    writeFileSync(path, text);
    return path;
  };
  it.each([
    ['a text', written('name: Spring order\nshop:\n  units: in\n'.repeat(30))],
    ['an empty file', written('')],
    ['a short file', written('SQLite format 3\0')],
    ['a database of another program', otherDatabase],
  ])('is refused: %s', (_, make) => {
    const path = make();
    const before = readFileSync(path);
    const error = refusal(path);
    expect(error.message).toContain(path);
    expect(error.code).toBe('not a rack');
    expect(error.message).toContain('name another file with --rack');
    expect(readFileSync(path).equals(before)).toBe(true);
    expect(readdirSync(dirname(path))).toEqual(['rack.sqlite']);
  });

  it('is refused where it is a folder, or lies below a file', () => {
    const path = someRack();
    expect(refusal(dirname(path)).code).toBe('cannot be opened');
    expect(refusal(join(path, 'rack.sqlite')).code).toBe('cannot be opened');
    expect(refusal('/proc/no/such/rack.sqlite').code).toBe('cannot be opened');
    expect(refusal(join(folder, 'r'.repeat(300))).code).toBe('cannot be opened');
  });
});

describe('a damaged rack', () => {
  it('is refused wherever its end is missing', () => {
    const whole = readFileSync(someRack(2_000));
    expect(whole.length).toBeGreaterThan(200_000);
    for (let cut = 1; cut <= 60; cut++) {
      const path = newPath();
      const rest = whole.subarray(0, Math.floor((whole.length * (60 - cut)) / 60 + 17));
      writeFileSync(path, rest);
      expect(['damaged', 'not a rack']).toContain(refusal(path).code);
      expect(readFileSync(path).equals(rest)).toBe(true);
    }
  });

  it('is refused where pages are overwritten, and nothing is made up', () => {
    const path = someRack(2_000);
    const bytes = readFileSync(path);
    bytes.fill(0x5a, 4_096);
    writeFileSync(path, bytes);
    expect(() => {
      const rack = racks.open(path);
      try {
        rack.list();
      } finally {
        rack.close();
      }
    }).toThrow(RackError);
  });
});

describe('versions of a rack', () => {
  /** As an older program made it, with an offcut on it. */
  function olderRack(version: number): string {
    const path = newPath();
    const connection = new Database(path);
    connection.pragma('application_id = 0x5261636b');
    connection.pragma('journal_mode = WAL');
    for (const step of MIGRATIONS.slice(0, version)) connection.exec(step);
    connection.exec(`
      INSERT INTO rack VALUES (1, 'old', 7);
      INSERT INTO stock VALUES (1, 'CCA', 'offcut', '', 4000000, 3000000, 'tinplate', NULL, NULL,
        'floor', '', '2020-01-01T00:00:00Z', NULL, 1, 0);
      INSERT INTO event VALUES (1, '2020-01-01T00:00:00Z', 1, 'added', 1, 0, NULL, NULL, '');`);
    connection.pragma(`user_version = ${version}`);
    connection.close();
    return path;
  }

  it('that are older are brought up to date, and a copy of the old one is kept', () => {
    expect(NEWEST_VERSION).toBeGreaterThan(1);
    for (let version = 1; version < NEWEST_VERSION; version++) {
      const path = olderRack(version);
      const rack = racks.open(path);
      expect(rack.list()).toMatchObject([{ mark: 'CCA', place: 'floor' }]);
      expect([rack.id, rack.revision]).toEqual(['old', 7]);
      expect(rack.keepRules()).toEqual([]);
      rack.close();
      expect(auditRack(path)).toEqual([]);
      const backup = new Database(backupOf(path, version), { readonly: true });
      expect(backup.pragma('user_version', { simple: true })).toBe(version);
      expect(backup.prepare('SELECT mark FROM stock').pluck().all()).toEqual(['CCA']);
      backup.close();
    }
  });

  it('that are newer are left alone', () => {
    const path = someRack();
    const connection = new Database(path);
    connection.pragma(`user_version = ${NEWEST_VERSION + 1}`);
    connection.close();
    const before = readFileSync(path);
    const error = refusal(path);
    expect(error.code).toBe('newer version');
    expect(error.message).toContain('install the newer one');
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});

describe('a disk that is full', () => {
  it('for this one file refuses what has no room, and keeps the rest', () => {
    const path = someRack(1);
    const ran = inShell(`ulimit -f 256; exec '${process.execPath}' '${program}' '${path}'`);
    expect(ran.fault).toBeUndefined();
    expect(['cannot be written', 'disk full']).toContain(ran.code);
    expect(ran.added).toBeGreaterThan(0);
    expect(ran.listed).toBe(Number(ran.added) + 1);
    // With room again, all that it said it took is there.
    expect(auditRack(path)).toEqual([]);
    const rack = racks.open(path);
    expect(rack.list()).toHaveLength(Number(ran.added) + 1);
    expect(rack.add([offcutOf()])).toHaveLength(1);
    rack.close();
  });

  const mounts = spawnSync('unshare', ['-rm', 'mount', '-t', 'tmpfs', 'none', folder]);
  it.skipIf(mounts.status !== 0)('as a whole says so, and goes on when there is room', () => {
    const disk = join(folder, 'disk');
    mkdirSync(disk);
    const first = `${process.execPath} ${program} ${disk}/rack.sqlite`;
    const [full, later] = inShell(`unshare -rm bash -c '
      mount -t tmpfs -o size=600k none ${disk}
      head -c 100000 /dev/zero > ${disk}/filler
      echo "[" "$(${first})" ","
      rm ${disk}/filler
      echo "$(${first})" "]"'`) as unknown as Record<string, unknown>[];
    expect(full).toMatchObject({ code: 'disk full', listed: full?.added });
    expect(full?.message).toContain('make room');
    expect(later).toMatchObject({
      code: 'disk full',
      listed: Number(full?.added) + Number(later?.added),
    });
    expect(later?.added).toBeGreaterThan(0);
  });
});

describe('a rack that may not be written', () => {
  it('is refused with what to check, and stays as it was', () => {
    const path = someRack();
    const before = readFileSync(path);
    chmodSync(path, 0o444);
    chmodSync(dirname(path), 0o555);
    const ran = inShell(`exec '${process.execPath}' '${program}' '${path}' nobody`);
    expect(ran).toMatchObject({ added: 0 });
    expect(['cannot be written', 'cannot be opened']).toContain(ran.code);
    expect(ran.message).toContain('check who may');
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it('cannot be made in a folder without permission', () => {
    const path = newPath();
    chmodSync(dirname(path), 0o555);
    const ran = inShell(`exec '${process.execPath}' '${program}' '${path}' nobody`);
    expect(ran).toMatchObject({ added: 0, code: 'cannot be opened' });
    expect(ran.message).toMatch(/check .*who may/);
    expect(existsSync(path)).toBe(false);
  });
});
