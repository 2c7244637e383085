import { describe, expect, it } from 'vitest';
import { Steps } from './steps.js';

describe('Steps', () => {
  it('says when they have run out, and keeps to it', () => {
    const steps = new Steps(5, { left: () => 1 });
    expect([steps.take(3), steps.take(2), steps.take(1), steps.take(0)]).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  it('ends with the time, which it looks at now and then', () => {
    let looks = 0;
    const steps = new Steps(1e9, {
      left: () => {
        looks++;
        return looks < 3 ? 1 : 0;
      },
    });
    let taken = 0;
    while (steps.take(1)) taken++;
    expect(looks).toBe(3);
    expect(taken).toBeGreaterThan(200_000);
    expect(taken).toBeLessThan(400_000);
  });
});
