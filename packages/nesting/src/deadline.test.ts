import { describe, expect, it } from 'vitest';
import { deadlineIn, shareOf } from './deadline.js';

describe('deadlines', () => {
  it('are so many seconds away, and shares of what is left then', () => {
    let now = 5_000;
    const all = deadlineIn(40, () => now);
    expect(all.left()).toBe(40);
    now += 8_000;
    const quarter = shareOf(all, 0.25);
    expect(quarter.left()).toBe(8);
    expect(shareOf(quarter, 0.5).left()).toBe(4);
    now += 10_000;
    expect(all.left()).toBe(22);
    expect(quarter.left()).toBe(-2);
  });
});
