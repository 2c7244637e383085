import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { shopWithMetal } from './rack.test.support.js';

test('rack draw writes a page of the offcuts, and writes it again over its own', async () => {
  const { good, cwd } = await shopWithMetal();
  const words = 'Written to rack.html, to open in a browser and print: 3 outlines.\n';
  expect(await good('draw rack.html')).toBe(words);
  const page = readFileSync(join(cwd, 'rack.html'), 'utf8');
  for (const mark of ['CCY', 'CDV', 'CER']) expect(page).toContain(`<b>${mark}</b>`);
  expect(page).not.toContain('<b>CFN</b>');
  expect(await good('draw rack.html')).toBe(words);
  expect(readFileSync(join(cwd, 'rack.html'), 'utf8')).toBe(page);
  expect(readdirSync(cwd).sort()).toEqual(['rack.html', 'usual']);
});

test('rack draw takes the filters of rack list', async () => {
  const { good, cwd } = await shopWithMetal();
  await good('draw sheets.html --kind sheets');
  expect(readFileSync(join(cwd, 'sheets.html'), 'utf8')).toContain('10 whole sheets');
  expect(await good('draw small.html --metal copper')).toContain('2 outlines');
});

test('rack draw leaves other files alone', async () => {
  const { bad, cwd } = await shopWithMetal();
  writeFileSync(join(cwd, 'letter.html'), '<p>Dear baker</p>');
  expect(await bad('draw letter.html')).toBe(
    'stripwright: letter.html: a file is there that is not a drawing of a rack; name another, or remove it\n',
  );
  expect(readFileSync(join(cwd, 'letter.html'), 'utf8')).toBe('<p>Dear baker</p>');
});

test('rack draw refuses more outlines than a page can show', async () => {
  const { good, bad } = await shopWithMetal();
  for (const _ of [1, 2]) await good('add "9 x 1" --count 1000');
  expect(await bad('draw rack.html')).toMatch(
    /^stripwright: 2003 outlines are too many for a page, 2000 at most; /,
  );
});
