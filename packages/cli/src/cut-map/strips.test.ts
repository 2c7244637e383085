import { describe, expect, it } from 'vitest';
import { readStrips } from './strips.js';

const stock = { name: 'A', kind: 'sheet', length: 500, width: 300 } as const;

describe('reading strips off a map', () => {
  it('takes a map without first cuts as one strip along x', () => {
    const cuts = [{ stage: 2, x1: 100, y1: 0, x2: 100, y2: 300 }] as const;
    expect(readStrips({ stock, cuts })).toEqual({
      cutsRun: 'x',
      extent: 300,
      start: 0,
      spans: [{ from: 0, to: 300 }],
      firstCuts: [],
    });
  });

  it('leaves out kerfs, trimmed edges, and a strip that is all dust', () => {
    const cuts = [
      { stage: 0, x1: 8, y1: 0, x2: 8, y2: 300 },
      { stage: 1, x1: 10, y1: 100, x2: 490, y2: 100 },
      { stage: 1, x1: 10, y1: 288, x2: 490, y2: 288 },
    ] as const;
    expect(readStrips({ stock, cuts, kerf: 2, trim: 10 })).toEqual({
      cutsRun: 'x',
      extent: 300,
      start: 10,
      spans: [
        { from: 10, to: 100 },
        { from: 102, to: 288 },
      ],
      firstCuts: [
        { order: 2, at: 100 },
        { order: 3, at: 288 },
      ],
    });
  });

  it('numbers first cuts among all cuts, as they are made, and sorts them by distance', () => {
    const cuts = [
      { stage: 1, x1: 400, y1: 0, x2: 400, y2: 300 },
      { stage: 2, x1: 0, y1: 50, x2: 400, y2: 50 },
      { stage: 1, x1: 90, y1: 0, x2: 90, y2: 300 },
    ] as const;
    expect(readStrips({ stock, cuts })).toEqual({
      cutsRun: 'y',
      extent: 500,
      start: 0,
      spans: [
        { from: 0, to: 90 },
        { from: 90, to: 400 },
        { from: 400, to: 500 },
      ],
      firstCuts: [
        { order: 3, at: 90 },
        { order: 1, at: 400 },
      ],
    });
  });
});
