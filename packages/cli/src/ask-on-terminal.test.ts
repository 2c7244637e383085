import { PassThrough } from 'node:stream';
import { expect, test } from 'vitest';
import { askOn } from './ask-on-terminal.js';

test('each question gets the next line, those that come early too, and none after the end', async () => {
  const input = new PassThrough();
  const output = new PassThrough();
  const ask = askOn(input, output);
  input.write('mm\n700 x 500');
  expect(await ask('Units? ')).toBe('mm');
  const second = ask('Sheet? ');
  input.write(' at 9\r\nthird\nfourth\nfif');
  expect(await second).toBe('700 x 500 at 9');
  expect(await ask('3? ')).toBe('third');
  expect(await ask('4? ')).toBe('fourth');
  input.end('th');
  expect(await ask('5? ')).toBe('fifth');
  expect(await ask('6? ')).toBeUndefined();
  expect(await ask('7? ')).toBeUndefined();
  expect(String(output.read())).toBe('Units? Sheet? 3? 4? 5? 6? 7? ');
});
