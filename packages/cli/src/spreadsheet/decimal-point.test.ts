import { expect, test } from 'vitest';
import { decimalPoint } from './decimal-point.js';
import type { Separator } from './separator.js';

test.each<[text: string, separator: Separator, read: string]>([
  ['17,5 in', ',', '17.5 in'],
  ['17,5 in', ';', '17.5 in'],
  ['0,011 in', ',', '0.011 in'],
  ['1,20', ',', '1.20'],
  ['1,200 mm', ';', '1.200 mm'],
  // A thousand, or one and a fifth? It is left to be refused.
  ['1,200 mm', ',', '1,200 mm'],
  ['1,200 mm', '\t', '1,200 mm'],
  ['17 1/2 in', ';', '17 1/2 in'],
])('%s between "%s" is read as %s', (text, separator, read) => {
  expect(decimalPoint(text, separator)).toBe(read);
});
