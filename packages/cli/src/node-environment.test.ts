import { existsSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { temporaryFolder } from './environment.test.support.js';
import { nodeFiles } from './node-environment.js';

describe('a folder is made', () => {
  test('with those above it, and again where it is there', async () => {
    const folder = join(temporaryFolder(), 'a', 'b', 'c');
    await nodeFiles.makeFolder(folder);
    await nodeFiles.makeFolder(folder);
    expect(statSync(folder).isDirectory()).toBe(true);
  });

  test('but not over a file, nor below one', async () => {
    const file = join(temporaryFolder(), 'file');
    writeFileSync(file, '');
    await expect(nodeFiles.makeFolder(file)).rejects.toMatchObject({ code: 'EEXIST' });
    await expect(nodeFiles.makeFolder(join(file, 'x'))).rejects.toMatchObject({ code: 'ENOTDIR' });
  });

  // mkdir with recursive: true never returns there (Node 20).
  test.skipIf(!existsSync('/proc/self'))('nor where the system keeps its own', async () => {
    await expect(nodeFiles.makeFolder('/proc/stripwright/x')).rejects.toMatchObject({
      code: 'ENOENT',
    });
  });
});

test('text is read as UTF-8, without a byte order mark, or refused', async () => {
  const file = join(temporaryFolder(), 'file');
  writeFileSync(file, '\ufeffname: \u20ac');
  expect(await nodeFiles.read(file)).toBe('name: \u20ac');
  writeFileSync(file, Buffer.from([0x61, 0xff]));
  await expect(nodeFiles.read(file)).rejects.toMatchObject({
    code: 'ERR_ENCODING_INVALID_ENCODED_DATA',
  });
});
