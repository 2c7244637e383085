import fc from 'fast-check';
import { expect, test } from 'vitest';
import { guarded, harmless, unguarded } from './cell-guard.js';

const texts = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 12 }),
  fc
    .tuple(fc.constantFrom("'", "''", '=', '+', '-', '@', '7', 'Mar 3', '\uFF1D'), fc.string())
    .map(([start, rest]) => `${start}${rest}`),
);

test('a cell gives back its text, whatever it begins with', () => {
  fc.assert(
    fc.property(texts, (text) => {
      expect(unguarded(guarded(text))).toBe(text);
    }),
    { numRuns: 2000 },
  );
});

// OWASP, CSV Injection: cells that begin with one of these are taken for formulas.
test.each(['=', '+', '-', '@', '\t', '\r', '\n', '\uFF1D', '\uFF0B', '\uFF0D', '\uFF20'])(
  'no cell begins with %s',
  (sign) => {
    expect(guarded(`${sign}1+1`)).toBe(`'${sign}1+1`);
    expect(harmless(`${sign}1+1`)).toBe(`'${sign}1+1`);
  },
);

// From memory: what spreadsheets make numbers, dates and times of.
test.each(['3-4', '1/2', '007', '1E5', '.5', '12:30', 'Mar 3', 'may7', 'DEC-24', "'tis"])(
  '%s stays a text',
  (text) => {
    expect(guarded(text)).toBe(`'${text}`);
  },
);

test.each(['left rack', 'shelf 3', 'marble', 'top, behind = the door', '', 'الرف'])(
  '%s is left alone',
  (text) => {
    expect(guarded(text)).toBe(text);
    expect(unguarded(text)).toBe(text);
  },
);

test.each(['3 in heart', '1/2', "'tis", 'Mar 3', 'left rack', ''])(
  '%s is left alone where the table is only looked at',
  (text) => {
    expect(harmless(text)).toBe(text);
  },
);

test('an apostrophe that a person typed before anything else stays', () => {
  expect(unguarded("'quoted'")).toBe("'quoted'");
});
