import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { VERSION } from './version.js';

test('the version is that of the package', () => {
  const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  expect(JSON.parse(text)).toMatchObject({ version: VERSION });
});
