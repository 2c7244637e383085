import { describe, expect, test } from 'vitest';
import { emphasised, wantsColour } from './emphasis.js';

const REPORT = [
  'Order',
  '2 pieces',
  '',
  'Buy',
  '  1 sheet',
  '',
  'Before cutting, think:',
  '  x',
  '',
  'Words.',
];

describe('a report', () => {
  test('is in colour where the output takes it, and says the same without', () => {
    const output = { isTerminal: true, colour: true, write: () => undefined };
    const lines = emphasised(REPORT, output);
    expect(lines).toEqual([
      ...['\u001b[1mOrder\u001b[0m', '2 pieces', '', '\u001b[1mBuy\u001b[0m', '  1 sheet', ''],
      ...['\u001b[1;33mBefore cutting, think:\u001b[0m', '  x', '', 'Words.'],
    ]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
    expect(lines.map((line) => line.replaceAll(/\u001b\[[\d;]*m/g, ''))).toEqual(REPORT);
    expect(emphasised(REPORT, { ...output, colour: false })).toEqual(REPORT);
    expect(emphasised(REPORT, { isTerminal: true, write: () => undefined })).toEqual(REPORT);
  });
});

// no-color.org: "when present and not an empty string (regardless of its value)".
test.each<[isTerminal: boolean, variables: Record<string, string>, colour: boolean]>([
  [true, {}, true],
  [true, { NO_COLOR: '' }, true],
  [true, { NO_COLOR: '1' }, false],
  [true, { NO_COLOR: '0' }, false],
  [true, { TERM: 'dumb' }, false],
  [false, {}, false],
])('a terminal: %j with %j', (isTerminal, variables, colour) => {
  expect(wantsColour(isTerminal, variables)).toBe(colour);
});
