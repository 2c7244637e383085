import { expect, test } from 'vitest';
import readme from '../README.md?raw';
import * as library from './index.js';

const code = /```ts\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
const importing = /^import \{([^}]*)\} from '@stripwright\/nesting';\n/;
const promise = /^(.+); \/\/ => (.+)$/gm;

test('the worked example does what its comments say', async () => {
  const names = (importing.exec(code)?.[1] ?? '').split(',').map((name) => name.trim());
  expect(code.match(promise)?.length).toBeGreaterThan(4);
  expect(code.match(/=>/g)?.length).toBe((code.match(promise)?.length ?? 0) + 1);
  const body = code.replace(importing, '').replace(promise, 'expect($1).toEqual($2);');
  const publicFace: Readonly<Record<string, unknown>> = library;
  const AsyncFunction = (async () => undefined).constructor as FunctionConstructor;
  const run = new AsyncFunction('expect', ...names, body);
  await run(expect, ...names.map((name) => publicFace[name]));
  expect.assertions(2 + (code.match(promise)?.length ?? 0));
});
