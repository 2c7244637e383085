import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Files } from './environment.js';
import { temporaryFolder } from './environment.test.support.js';
import { nodeFiles } from './node-environment.js';
import { writeWhole } from './whole-file.js';

const KIND = 'one of ours';
const isOurs = (text: string) => text.startsWith('ours');

test('a file is written in a folder that is made for it, and replaced by its like', async () => {
  const folder = temporaryFolder();
  const file = { path: join(folder, 'new', 'page'), shown: 'new/page', kind: KIND, isOurs };
  for (const text of ['ours 1', 'ours 2']) {
    await writeWhole({ ...file, text }, nodeFiles);
    expect(readFileSync(file.path, 'utf8')).toBe(text);
  }
  expect(readdirSync(join(folder, 'new'))).toEqual(['page']);
});

test('another file is left alone', async () => {
  const path = join(temporaryFolder(), 'page');
  writeFileSync(path, 'theirs');
  const file = { path, shown: 'page', text: 'ours', kind: KIND, isOurs };
  await expect(writeWhole(file, nodeFiles)).rejects.toMatchObject({
    exitCode: 2,
    message: 'page: a file is there that is not one of ours; name another, or remove it',
  });
  expect(readFileSync(path, 'utf8')).toBe('theirs');
});

test.each(['write', 'rename'] as const)(
  'the older file stays whole where %s fails',
  async (step) => {
    const folder = temporaryFolder();
    const path = join(folder, 'page');
    writeFileSync(path, 'ours, older');
    const full: Files = {
      ...nodeFiles,
      async [step]() {
        throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      },
    };
    const file = { path, shown: 'page', text: 'ours', kind: KIND, isOurs };
    await expect(writeWhole(file, full)).rejects.toMatchObject({
      exitCode: 2,
      message: 'page: cannot be written: the disk is full',
    });
    expect(readFileSync(path, 'utf8')).toBe('ours, older');
    expect(readdirSync(folder)).toEqual(['page']);
  },
);
