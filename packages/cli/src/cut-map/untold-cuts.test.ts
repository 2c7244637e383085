import { describe, expect, it } from 'vitest';
import { millimetres } from './random-cut-map.test.support.js';
import { untoldCutLines } from './untold-cuts.js';

const upright = (number: number, x: number, y: number, stage = 2) => ({
  ...{ number, stage, x1: x, x2: x, y1: y, y2: y + 30 },
});

describe('cuts whose numbers found no room', () => {
  it('are told by the strip that they are made in, those at equal steps together', () => {
    const cuts = [upright(4, 20, 0), upright(5, 40, 0), upright(6, 60, 0), upright(7, 75, 0)];
    expect(untoldCutLines([...cuts].reverse(), 0, millimetres)).toEqual([
      '0 mm up: cuts 4 to 6 at 20 mm and each 20 mm on; cut 7 at 75 mm.',
    ]);
  });

  it('of strips that are cut alike are told once', () => {
    const rows = [0, 30, 60].flatMap((y, row) => [
      upright(10 + 2 * row, 50, y),
      upright(11 + 2 * row, 100, y),
    ]);
    expect(untoldCutLines([...rows, upright(16, 80, 90)], 0, millimetres)).toEqual([
      '3 strips from 0 mm up, each 30 mm on: cuts 10 to 15 at 50 mm and each 50 mm on.',
      '90 mm up: cut 16 at 80 mm.',
    ]);
  });

  it('are measured from the trimmed corner, level ones from the left', () => {
    const level = { number: 5, stage: 1, x1: 10, x2: 300, y1: 40, y2: 40 };
    expect(untoldCutLines([level], 10, millimetres)).toEqual(['0 mm right: cut 5 at 30 mm.']);
  });
});
