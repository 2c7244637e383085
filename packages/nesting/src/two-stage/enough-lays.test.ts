import { describe, expect, it } from 'vitest';
import { EnoughLays } from './enough-lays.js';

describe('EnoughLays', () => {
  it('leaves out what shorter lays worth as much can always replace', () => {
    const enough = new EnoughLays([3, 4, 5], [9, 9, 9], 12);
    expect([...enough.of([10, 9, 12])]).toEqual([0, 2]);
    expect([...enough.of([12, 12, 12])]).toEqual([0]);
    expect([...enough.of([0, 9, 9])]).toEqual([1]);
  });

  it('leaves out nothing for which too few copies of others can stand in', () => {
    // Four copies of the first fit, so that with three of them the second may be wanted too.
    expect([...new EnoughLays([3, 4], [3, 9], 12).of([10, 9])]).toEqual([0, 1]);
    expect([...new EnoughLays([3, 4], [4, 9], 12).of([10, 9])]).toEqual([0]);
    // The copies of several count together, each as short as the shortest.
    expect([...new EnoughLays([3, 4, 5], [3, 1, 9], 12).of([10, 10, 9])]).toEqual([0, 1]);
    expect([...new EnoughLays([3, 4, 5], [2, 1, 9], 12).of([10, 10, 9])]).toEqual([0, 1, 2]);
  });
});
