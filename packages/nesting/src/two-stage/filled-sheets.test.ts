import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dropSurplus, type FilledSheet, fillSheets } from './filled-sheets.js';
import type { SheetPattern, StripPattern } from './patterns.js';
import type { Faces } from './strip-families.js';

/** Two pieces: 0 is 4 across, 1 is 2 across; strips may be 2 or 4 wide. */
const faces: Faces = {
  families: [
    {
      length: 20,
      lays: [
        { piece: 1, along: 3, across: 2 },
        { piece: 0, along: 5, across: 4 },
      ],
      widths: [2, 4],
      fitting: [1, 2],
    },
  ],
  faces: [{ stockClass: 0, family: 0, breadth: 12, direction: 'along' }],
};
const wide = (ones: number, twos: number): StripPattern => ({
  family: 0,
  width: 1,
  lays: [[0, twos] as const, [1, ones] as const].filter(([, count]) => count > 0),
});
const sheet: SheetPattern = { face: 0, widths: [[1, 3]] };

function pieces(sheets: readonly FilledSheet[]): readonly [number, number] {
  const made: [number, number] = [0, 0];
  for (const { strips, count } of sheets) {
    for (const { lays } of strips) {
      for (const [lay, copies] of lays) made[faces.families[0].lays[lay].piece] += copies * count;
    }
  }
  return made;
}

describe('fillSheets', () => {
  it('puts every strip into a sheet, in as few different sheets as it can', () => {
    const filled = fillSheets(
      {
        cost: 0,
        sheets: [[sheet, 3]],
        strips: [
          [wide(4, 0), 6],
          [wide(2, 3), 3],
        ],
      },
      faces,
    );
    expect(filled.map((entry) => entry.count)).toEqual([2, 1]);
    expect(pieces(filled)).toEqual([6 * 4 + 3 * 2, 3 * 3]);
  });

  it('leaves out a sheet for which no strips are left', () => {
    const filled = fillSheets({ cost: 0, sheets: [[sheet, 5]], strips: [[wide(4, 0), 4]] }, faces);
    expect(filled.reduce((sum, entry) => sum + entry.count, 0)).toBe(2);
  });
});

describe('dropSurplus', () => {
  it('leaves exactly the demand, and narrows what lost its widest piece', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            strips: fc.array(
              fc.tuple(fc.nat(3), fc.nat(3)).filter(([ones, twos]) => ones + twos > 0),
              { minLength: 1, maxLength: 3 },
            ),
            count: fc.integer({ min: 1, max: 6 }),
          }),
          { minLength: 1, maxLength: 5 },
        ),
        fc.float({ min: 0, max: 1, noNaN: true }),
        fc.float({ min: 0, max: 1, noNaN: true }),
        (drawn, first, second) => {
          const sheets = drawn.map(({ strips, count }) => ({
            face: 0,
            strips: strips.map(([ones, twos]) => wide(ones, twos)),
            count,
          }));
          const made = pieces(sheets);
          const demand = [Math.floor(made[0] * first), Math.floor(made[1] * second)];
          const left = dropSurplus(sheets, faces, demand);
          expect(pieces(left)).toEqual(demand);
          for (const { strips, count } of left) {
            expect(count).toBeGreaterThan(0);
            for (const strip of strips) {
              const widest = Math.max(
                ...strip.lays.map(([lay]) => faces.families[0].lays[lay].across),
              );
              expect(faces.families[0].widths[strip.width]).toBe(widest);
            }
          }
        },
      ),
    );
  });
});
