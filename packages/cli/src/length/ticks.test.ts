import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ticksDown, ticksExactly, ticksToMillimetres, ticksUp } from './ticks.js';

const MARK = 25.4 / 32;

describe('lengths in whole marks', () => {
  test('a length on a mark stays there, whatever arithmetic has done to it', () => {
    expect(ticksUp(431.8000000001, MARK)).toBe(544);
    expect(ticksUp(431.7999999999, MARK)).toBe(544);
    expect(ticksDown(431.8000000001, MARK)).toBe(544);
    expect(ticksDown(431.7999999999, MARK)).toBe(544);
  });

  test('a blank rounds up and a sheet rounds down', () => {
    expect(ticksUp(431.81, MARK)).toBe(545);
    expect(ticksDown(431.79, MARK)).toBe(543);
  });

  test('millimetres of ticks carry no binary dust', () => {
    expect(ticksToMillimetres(3, 0.1)).toBe(0.3);
    expect(ticksToMillimetres(544, MARK)).toBe(431.8);
  });

  test('a length off the marks has no exact ticks', () => {
    expect(ticksExactly(431.8, MARK)).toBe(544);
    expect(ticksExactly(431.80001, MARK)).toBeUndefined();
  });

  const marks = fc.constantFrom(25.4 / 64, MARK, 25.4 / 12, 0.5, 0.1, 1 / 3, 0.01);

  test('up is never shorter, down never longer, and both by less than a mark', () => {
    const lengths = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(lengths, marks, (length, mark) => {
        const up = ticksUp(length, mark) * mark - length;
        const down = length - ticksDown(length, mark) * mark;
        const dust = 2e-6 * mark;
        for (const gap of [up, down]) {
          expect(gap).toBeGreaterThanOrEqual(-dust);
          expect(gap).toBeLessThan(mark + dust);
        }
      }),
    );
  });

  test('ticks survive a plan file', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), marks, (ticks, mark) => {
        const read: unknown = JSON.parse(JSON.stringify(ticksToMillimetres(ticks, mark)));
        expect(ticksExactly(Number(read), mark)).toBe(ticks);
      }),
    );
  });
});
