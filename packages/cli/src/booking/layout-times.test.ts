import { describe, expect, test } from 'vitest';
import { readLayoutTimes } from './layout-times.js';

describe('layouts on the command line', () => {
  test.each([
    ['2', [[1, 1]]],
    ['2x3', [[1, 3]]],
    [
      ' 1, 2 X 3 ,4×2',
      [
        [0, 1],
        [1, 3],
        [3, 2],
      ],
    ],
    [
      '2,2',
      [
        [1, 1],
        [1, 1],
      ],
    ],
  ])('%j', (text, expected) => {
    const read = readLayoutTimes(text);
    expect(read.ok && read.value.map(({ layout, times }) => [layout, times])).toEqual(expected);
  });

  test.each(['', '0', '1x0', '-1', 'x2', '1,', '1.5', '2x', 'one', '1x9999999', '9'.repeat(400)])(
    '%j is none',
    (text) => {
      expect(readLayoutTimes(text)).toEqual({ ok: false, complaint: { code: 'not layouts' } });
    },
  );
});
