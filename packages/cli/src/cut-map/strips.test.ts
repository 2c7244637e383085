import { describe, expect, it } from 'vitest';
import { readStrips } from './strips.js';

const stock = { name: 'A', kind: 'sheet', length: 500, width: 300 } as const;

describe('reading strips off a map', () => {
  it('takes a map without first cuts as one strip along x', () => {
    const cuts = [{ stage: 2, x1: 100, y1: 0, x2: 100, y2: 300 }] as const;
    expect(readStrips({ stock, cuts })).toEqual({
      cutsRun: 'x',
      extent: 300,
      spans: [{ from: 0, to: 300 }],
      firstCuts: [],
    });
  });

  it('numbers first cuts as they are made and sorts them by distance', () => {
    const cuts = [
      { stage: 1, x1: 400, y1: 0, x2: 400, y2: 300 },
      { stage: 2, x1: 0, y1: 50, x2: 400, y2: 50 },
      { stage: 1, x1: 90, y1: 0, x2: 90, y2: 300 },
    ] as const;
    expect(readStrips({ stock, cuts })).toEqual({
      cutsRun: 'y',
      extent: 500,
      spans: [
        { from: 0, to: 90 },
        { from: 90, to: 400 },
        { from: 400, to: 500 },
      ],
      firstCuts: [
        { order: 2, at: 90 },
        { order: 1, at: 400 },
      ],
    });
  });
});
