import { describe, expect, test } from 'vitest';
import { warningLines } from './warning-lines.js';

const IN = { units: 'in', mark: 25.4 / 32 } as const;
const narrow = (bend: number) => ({
  kind: 'notch too narrow',
  message: `The notch at bend ${bend} needs 68.9673 to clear itself.`,
});

describe('warnings', () => {
  test('that are alike are said once', () => {
    expect(warningLines([narrow(1), narrow(3), narrow(7)], IN)).toEqual([
      '  The notch at bend 1 needs 69 to clear itself. The same at bends 3 and 7.',
    ]);
    expect(warningLines([narrow(1), narrow(3)], IN, 'Star')).toEqual([
      '  Star: The notch at bend 1 needs 69 to clear itself. The same at bend 3.',
    ]);
  });

  test('that differ are kept apart, each with its source', () => {
    const other = { kind: 'short flat', message: 'The flat is short.', source: 'common practice' };
    expect(warningLines([narrow(1), other, { ...other, kind: 'x' }], IN)).toHaveLength(2);
    expect(warningLines([other], IN)).toEqual(['  The flat is short. (common practice)']);
  });

  test('of pairs of bends and of flats name the others', () => {
    const pair = (bends: string) => ({ kind: 'k', message: `The notches at bends ${bends} meet.` });
    expect(warningLines([pair('1 and 2'), pair('3 and 4')], IN)).toEqual([
      '  The notches at bends 1 and 2 meet. The same at bends 3 and 4.',
    ]);
    const flat = (from: number) => ({
      kind: 'k',
      message: `The flat from ${from} mm to ${from + 1} mm is short.`,
    });
    expect(warningLines([flat(10), flat(20)], { units: 'mm', mark: 0.5 })).toEqual([
      '  The flat from 10 mm to 11 mm is short. The same at flat from 20 mm to 21 mm.',
    ]);
  });
});
