import { spawn } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Files } from '../environment.js';
import { temporaryFolder } from '../environment.test.support.js';
import { nodeFiles } from '../node-environment.js';
import { finishPacket, putPacket } from './whole-packet.js';

const isStale = (name: string) => name.startsWith('cut-map-');

function packetOf(mark: string, count: number) {
  const names = Array.from({ length: count }, (_, index) => `cut-map-${index + 1}.svg`);
  return [...names, 'plan.json'].map((name) => ({ name, text: `${mark} ${name}` }));
}

/** What lies in a folder, each file with its text. */
function contents(folder: string): Readonly<Record<string, string>> {
  const names = readdirSync(folder).sort();
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(folder, name), 'utf8')]));
}

const asRecord = (packet: ReturnType<typeof packetOf>) =>
  Object.fromEntries(packet.map(({ name, text }) => [name, text]));

class Killed extends Error {}

/** Files of a program that is killed at its nth change: that one is not made, or half of it. */
function killedAt(nth: number, half: boolean): Files & { readonly changes: () => number } {
  let count = 0;
  const change = async (made: () => Promise<void>, halved: () => Promise<void>) => {
    count += 1;
    if (count > nth) throw new Killed();
    if (count < nth) return made();
    if (half) await halved();
    throw new Killed();
  };
  const none = async () => undefined;
  return {
    ...nodeFiles,
    write: (path, text) =>
      change(
        () => nodeFiles.write(path, text),
        () => nodeFiles.write(path, text.slice(0, text.length / 2)),
      ),
    rename: (from, to) => change(() => nodeFiles.rename(from, to), none),
    remove: (path) => change(() => nodeFiles.remove(path), none),
    changes: () => count,
  };
}

describe('the writing of a packet', () => {
  test.each([
    [3, 5],
    [5, 2],
  ])(
    'killed anywhere leaves the old or the new, whole: %i maps, then %i',
    async (before, after) => {
      const older = packetOf('old', before);
      const newer = packetOf('new', after);
      const seen = new Set<string>();
      for (const half of [false, true]) {
        for (let nth = 1; ; nth += 1) {
          const folder = temporaryFolder();
          writeFileSync(join(folder, 'notes.txt'), 'mine');
          await putPacket(folder, older, isStale, nodeFiles);
          const files = killedAt(nth, half);
          const wasKilled = await putPacket(folder, newer, isStale, files).then(
            () => false,
            (error) => error instanceof Killed,
          );
          await finishPacket(folder, nodeFiles);
          const { 'notes.txt': notes, ...rest } = contents(folder);
          expect(notes).toBe('mine');
          const isNew = rest['plan.json']?.startsWith('new') === true;
          expect(rest).toEqual(asRecord(isNew ? newer : older));
          seen.add(isNew ? 'new' : 'old');
          if (!wasKilled) break;
          expect(files.changes()).toBeGreaterThanOrEqual(nth);
        }
      }
      expect([...seen].sort()).toEqual(['new', 'old']);
    },
  );

  test('killed again while it is finished is finished by the next', async () => {
    for (let first = 1; first < 14; first += 1) {
      for (let second = 1; second < 8; second += 1) {
        const folder = temporaryFolder();
        await putPacket(folder, packetOf('old', 4), isStale, nodeFiles);
        await putPacket(folder, packetOf('new', 2), isStale, killedAt(first, false)).catch(
          () => {},
        );
        await finishPacket(folder, killedAt(second, false)).catch(() => {});
        await finishPacket(folder, nodeFiles);
        const found = contents(folder);
        const isNew = found['plan.json']?.startsWith('new') === true;
        expect(found).toEqual(asRecord(packetOf(isNew ? 'new' : 'old', isNew ? 2 : 4)));
      }
    }
  });

  test('in a process that is killed for good leaves one packet', async () => {
    const support = new URL('../../dist/packet/killed-packet.test.support.js', import.meta.url);
    for (let round = 0; round < 12; round += 1) {
      const folder = temporaryFolder();
      const child = spawn(process.execPath, [support.pathname, folder]);
      let written = 0;
      // Somewhere within a packet, which takes a dozen changes or more.
      child.stdout.on('data', (data) => {
        written += String(data).length;
        if (written > round * 3) child.kill('SIGKILL');
      });
      const signal = await new Promise((resolve) =>
        child.on('close', (_code, ending) => resolve(ending)),
      );
      expect(signal).toBe('SIGKILL');
      await finishPacket(folder, nodeFiles);
      const texts = Object.values(contents(folder));
      expect(new Set(texts).size).toBe(1);
      const mark = Number(/^(.+?)\1{1999}$/.exec(texts[0] ?? '')?.[1]);
      expect(texts).toHaveLength(3 + (mark % 5));
    }
  });

  test('takes nothing outside of its folder for its own, whatever its note says', async () => {
    const folder = temporaryFolder();
    const inner = join(folder, 'packet');
    await putPacket(inner, packetOf('old', 1), isStale, nodeFiles);
    writeFileSync(join(folder, 'mine'), 'mine');
    const todo = { names: ['../x'], stale: ['../mine', 3, 'cut-map-1.svg'] };
    writeFileSync(join(inner, '.stripwright-complete'), JSON.stringify(todo));
    await finishPacket(inner, nodeFiles);
    expect(readdirSync(folder).sort()).toEqual(['mine', 'packet']);
    expect(readdirSync(inner)).toEqual(['plan.json']);
  });

  test('keeps what is no text as it is', async () => {
    const folder = temporaryFolder();
    const bytes = Uint8Array.from([0x25, 0x50, 0xff, 0x00]);
    await putPacket(folder, [{ name: 'job-sheet.pdf', text: bytes }], isStale, nodeFiles);
    expect(new Uint8Array(readFileSync(join(folder, 'job-sheet.pdf')))).toEqual(bytes);
  });
});
