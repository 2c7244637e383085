import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Files } from '../environment.js';
import { temporaryFolder } from '../environment.test.support.js';
import { nodeFiles } from '../node-environment.js';
import { checkPacketFolder, finishPacketOf, writePacket } from './packet-folder.js';

const PLAN = JSON.stringify({ schemaVersion: 1, layouts: [], blanks: [], buy: [], bound: {} });
const packet = (maps: number, mark = '') => [
  ...Array.from({ length: maps }, (_, index) => ({ name: `cut-map-${index + 1}.svg`, text: mark })),
  { name: 'plan.json', text: PLAN },
];

describe('a folder may be written to', () => {
  const check = (folder: string) => checkPacketFolder(folder, 'packet', nodeFiles);

  test('when it is new, empty, or holds an older plan', async () => {
    const folder = temporaryFolder();
    await expect(check(join(folder, 'new', 'deep'))).resolves.toBeUndefined();
    await expect(check(folder)).resolves.toBeUndefined();
    await writePacket(folder, 'packet', packet(2), nodeFiles);
    await expect(check(folder)).resolves.toBeUndefined();
  });

  test.each([
    ['other files', 'letter.txt', 'Dear baker'],
    ['a plan.json of someone else', 'plan.json', '{"days": 3}'],
    ['a plan.json that is not JSON', 'plan.json', 'to do'],
    ['a job sheet without a plan', 'job-sheet.html', 'of another shop'],
  ])('but not when it holds %s', async (_name, file, text) => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, file), text);
    await expect(check(folder)).rejects.toMatchObject({
      exitCode: 2,
      message: expect.stringMatching(/^packet: the folder is not empty .* name a new folder/),
    });
    expect(readFileSync(join(folder, file), 'utf8')).toBe(text);
  });

  test('nor when it is a file', async () => {
    const file = join(temporaryFolder(), 'packet');
    writeFileSync(file, '');
    await expect(check(file)).rejects.toMatchObject({ exitCode: 2 });
  });
});

describe('a packet', () => {
  test('replaces an older one, with fewer maps, and leaves the rest alone', async () => {
    const folder = temporaryFolder();
    await writePacket(folder, 'packet', packet(12, 'old'), nodeFiles);
    writeFileSync(join(folder, 'notes.txt'), 'mine');
    writeFileSync(join(folder, 'cut-map-old.svg'), 'mine');
    await writePacket(folder, 'packet', packet(2, 'new'), nodeFiles);
    expect(readdirSync(folder).sort()).toEqual([
      'cut-map-1.svg',
      'cut-map-2.svg',
      'cut-map-old.svg',
      'notes.txt',
      'plan.json',
    ]);
    expect(readFileSync(join(folder, 'cut-map-2.svg'), 'utf8')).toBe('new');
  });

  test('that cannot be written leaves the older one whole', async () => {
    const folder = temporaryFolder();
    await writePacket(folder, 'packet', packet(2, 'old'), nodeFiles);
    const full: Files = {
      ...nodeFiles,
      async write(path, text) {
        if (path.includes('cut-map-2')) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
        await nodeFiles.write(path, text);
      },
    };
    await expect(writePacket(folder, 'packet', packet(3, 'new'), full)).rejects.toMatchObject({
      exitCode: 2,
      message: 'packet: cannot be written to: the disk is full',
    });
    expect(readdirSync(folder).sort()).toEqual(['cut-map-1.svg', 'cut-map-2.svg', 'plan.json']);
    expect(readFileSync(join(folder, 'cut-map-1.svg'), 'utf8')).toBe('old');
  });

  test('that was broken off when it was complete is finished before it is read', async () => {
    const cwd = temporaryFolder();
    const folder = join(cwd, 'packet');
    let renames = 0;
    const killed: Files = {
      ...nodeFiles,
      async rename(from, to) {
        renames += 1;
        // The note that all is complete, one map, and no more.
        if (renames > 2) throw new Error('killed');
        await nodeFiles.rename(from, to);
      },
    };
    await expect(writePacket(folder, 'packet', packet(2, 'new'), killed)).rejects.toThrow('killed');
    expect(readdirSync(folder)).not.toContain('plan.json');
    await expect(checkPacketFolder(folder, 'packet', nodeFiles)).resolves.toBeUndefined();
    await finishPacketOf('packet/plan.json', { cwd, files: nodeFiles });
    expect(readdirSync(folder).sort()).toEqual(['cut-map-1.svg', 'cut-map-2.svg', 'plan.json']);
  });

  test('whose note is spoilt is left as it was', async () => {
    const cwd = temporaryFolder();
    const folder = join(cwd, 'packet');
    await writePacket(folder, 'packet', packet(1, 'old'), nodeFiles);
    writeFileSync(join(folder, '.stripwright-complete'), '{"names":["pl');
    await finishPacketOf('packet/plan.json', { cwd, files: nodeFiles });
    expect(readdirSync(folder).sort()).toEqual(['cut-map-1.svg', 'plan.json']);
  });

  test('that was broken off does not bar the folder', async () => {
    const folder = join(temporaryFolder(), 'packet');
    mkdirSync(folder);
    writeFileSync(join(folder, '.cut-map-1.svg.stripwright-partial'), 'half');
    writeFileSync(join(folder, '.job-sheet.html.stripwright-partial'), 'half');
    await expect(checkPacketFolder(folder, 'packet', nodeFiles)).resolves.toBeUndefined();
    await writePacket(folder, 'packet', packet(0), nodeFiles);
    expect(readdirSync(folder)).toEqual(['plan.json']);
  });
});
