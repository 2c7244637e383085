import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { run, temporaryFolder } from '../environment.test.support.js';

const cwd = temporaryFolder();

test('writes the page and its pictures, and writes them again over its own', async () => {
  for (const units of ['mm', 'in']) {
    const { exitCode, stdout, stderr } = await run(['gallery', '--out', 'a', '--units', units], {
      cwd,
    });
    expect(stderr).toBe('');
    expect(exitCode).toBe(0);
    expect(stdout).toMatch(/^Written to a\/: index\.html/);
    const names = readdirSync(join(cwd, 'a'));
    expect(names).toContain('index.html');
    expect(names).toContain('heart.svg');
    expect(names.filter((name) => !/^(?:index\.html|[a-z-]+\.svg)$/.test(name))).toEqual([]);
    expect(stdout).toContain(`${names.length - 1} pictures`);
  }
});

test('leaves a folder alone that holds anything else', async () => {
  mkdirSync(join(cwd, 'b'));
  writeFileSync(join(cwd, 'b', 'letter.txt'), 'Dear baker');
  const { exitCode, stdout, stderr } = await run(['gallery', '--out', 'b'], { cwd });
  expect([exitCode, stdout]).toEqual([2, '']);
  expect(stderr).toBe(
    'stripwright: b: the folder holds letter.txt, which is no part of the gallery; name a new ' +
      'folder with --out, or empty this one\n',
  );
  expect(readdirSync(join(cwd, 'b'))).toEqual(['letter.txt']);
});

test.each([
  ['', 'stripwright: --out is missing; give the name of a folder\n'],
  ['--out=', 'stripwright: --out is missing; give the name of a folder\n'],
  ['--out c --units cm', 'stripwright: --units must be in or mm; found cm; did you mean "mm"?\n'],
  ['--out c heart', 'stripwright: unknown: heart; see stripwright gallery --help\n'],
])('gallery %s', async (words, message) => {
  const argv = words.split(' ').filter((word) => word !== '');
  expect(await run(['gallery', ...argv], { cwd })).toEqual({
    exitCode: 2,
    stdout: '',
    stderr: message,
  });
});
