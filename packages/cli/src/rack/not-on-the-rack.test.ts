import { expect, test } from 'vitest';
import { notOnTheRack } from './not-on-the-rack.js';
import { markOf } from './offcut-mark.js';

const MARKS = Array.from({ length: 30 }, (_, index) => markOf(index + 1));

test.each<[text: string, wrong: 'sign' | 'check' | 'absent', nearest: readonly string[]]>([
  // One sign misread, which is no mark by its check sign.
  ['CCX', 'check', ['CCY']],
  // Two neighbours swapped.
  ['DCV', 'check', ['CDV']],
  // One left out.
  ['CY', 'sign', ['CCY']],
  [' ccy2 ', 'check', ['CCY']],
  ['?', 'sign', []],
  ['shelf three', 'sign', []],
])('%s is wrong by its %s; near to it: %j', (text, wrong, nearest) => {
  const complaint = notOnTheRack(text, MARKS);
  expect(complaint).toMatchObject({ code: 'not a mark', wrong });
  if (complaint.code === 'not a mark') {
    expect(complaint.nearest.length).toBeLessThanOrEqual(3);
    expect(complaint.nearest).toEqual(expect.arrayContaining([...nearest]));
    if (nearest.length === 0) expect(complaint.nearest).toEqual([]);
  }
});

test('a mark that nothing has, though it is one', () => {
  expect(notOnTheRack(markOf(3000), MARKS)).toMatchObject({ wrong: 'absent' });
});
