import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnWidths } from './column-widths.js';

describe('the widths of columns', () => {
  it('are what is wanted where there is room, or else an even share for the wide ones', () => {
    expect(columnWidths([20, 30], 100)).toEqual([20, 30]);
    expect(columnWidths([20, 300, 400], 100)).toEqual([20, 40, 40]);
  });

  it('never come to more than the room', () => {
    const wanted = fc.array(fc.double({ min: 0, max: 400, noNaN: true }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(wanted, (widths) => {
        const given = columnWidths(widths, 190);
        expect(given.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(190 + 1e-6);
        given.forEach((width, index) => {
          expect(width).toBeLessThanOrEqual((widths[index] ?? 0) + 1e-9);
        });
      }),
    );
  });
});
