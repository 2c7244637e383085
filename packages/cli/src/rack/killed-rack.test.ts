import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../environment.test.support.js';
import { auditRack } from './audit.test.support.js';
import { sqliteRacks } from './sqlite-racks.js';

const KILLS = 500;
/** A new rack after so many, so that making one is killed at times too. */
const KILLS_OF_ONE = 25;
/** Milliseconds after its first deed, or from its start, in which one is killed. */
const LIVES = 60;

// The program runs as it is built, in a process of its own.
const program = fileURLToPath(
  new URL('../../dist/rack/killed-rack.test.support.js', import.meta.url),
);
const racks = sqliteRacks({ now: () => '2026-03-02T09:00:00.000Z', newId: () => 'parent' });

interface Death {
  /** The last deed that the program told of, and the revision of the rack with it. */
  readonly told: string | undefined;
  readonly revision: number;
  readonly stderr: string;
}

function runAndKill(path: string, name: string): Promise<Death> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, path, name]);
    let [stdout, stderr] = ['', ''];
    const life = Math.random() * LIVES;
    let isTimed = false;
    const die = () => {
      if (!isTimed) setTimeout(() => child.kill('SIGKILL'), life);
      isTimed = true;
    };
    // Some before their first deed: while they open the rack, or make it.
    if (Math.random() < 0.2) setTimeout(die, Math.random() * 80);
    child.stdout.on('data', (text) => {
      stdout += text;
      die();
    });
    child.stderr.on('data', (text) => {
      stderr += text;
    });
    child.on('error', reject);
    child.on('close', () => {
      const told = stdout.split('\n').slice(0, -1).at(-1);
      resolve({ told, revision: Number.parseInt(told ?? '0', 10), stderr });
    });
  });
}

describe('a rack whose program is killed', () => {
  it(`opens and is whole after each of ${KILLS} kills`, { timeout: 1_200_000 }, async () => {
    const folder = temporaryFolder();
    const deeds = new Set<string>();
    let died = 0;
    for (let kill = 0; kill < KILLS; kill++) {
      const path = join(folder, `rack-${Math.floor(kill / KILLS_OF_ONE)}.sqlite`);
      const { told, revision, stderr } = await runAndKill(path, `program ${kill}`);
      expect(stderr).toBe('');
      died++;
      deeds.add(told?.split(' ')[1] ?? 'none');
      if (!existsSync(path)) {
        expect(told).toBeUndefined();
        continue;
      }
      expect(auditRack(path)).toEqual([]);
      const rack = racks.open(path);
      // What was told to be done is there.
      expect(rack.revision).toBeGreaterThanOrEqual(revision);
      rack.list({ gone: true });
      rack.close();
    }
    expect(died).toBe(KILLS);
    // Or it was never killed amid one of them.
    expect([...deeds]).toEqual(
      expect.arrayContaining(['added', 'booked', 'undone', 'imported', 'none']),
    );
  });
});
