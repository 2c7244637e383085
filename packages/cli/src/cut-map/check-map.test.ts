import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMap } from './check-map.js';
import type { CutMap } from './cut-map.js';
import { anyCutMap, millimetres } from './random-cut-map.test.support.js';

const piece = { number: 1, name: 'A', x: 0, y: 0, length: 100, width: 30, turned: false };
const map: CutMap = {
  title: 'Order',
  number: 1,
  of: 1,
  count: 1,
  stock: { name: 'A', kind: 'sheet', length: 500, width: 300 },
  pieces: [piece],
  cuts: [{ stage: 1, x1: 0, y1: 30, x2: 500, y2: 30 }],
  remnants: [],
  printLength: millimetres,
};

describe('checking a cut map', () => {
  it('passes what hangs together', () => {
    fc.assert(
      fc.property(anyCutMap, (any) => {
        expect(() => checkMap(any)).not.toThrow();
      }),
    );
  });

  it.each<[string, Partial<CutMap>]>([
    ['stock.length must be more than 0 mm; got 0', { stock: { ...map.stock, length: 0 } }],
    [
      'pieces[0].x must be from 0 to 400 mm to lie on the stock; got 401',
      { pieces: [{ ...piece, x: 401 }] },
    ],
    ['pieces[0].y must be from 0 to 270 mm', { pieces: [{ ...piece, y: NaN }] }],
    [
      'remnants[0].width must be more than 0 mm; got -1',
      { remnants: [{ x: 0, y: 0, length: 1, width: -1, keep: true }] },
    ],
    [
      'pieces[1] must be 100 x 30 mm, as blank 1 is elsewhere; got 30 x 100',
      { pieces: [piece, { ...piece, length: 30, width: 100 }] },
    ],
    [
      'cuts[0] must run along an edge of the stock; got (0, 30) to (500, 31)',
      { cuts: [{ stage: 1, x1: 0, y1: 30, x2: 500, y2: 31 }] },
    ],
    [
      'cuts[1] must run along x, as the first first-stage cut does; got along y',
      { cuts: [...map.cuts, { stage: 1, x1: 9, y1: 0, x2: 9, y2: 300 }] },
    ],
    [
      'cuts[0].x2 must be from 0 to 500 mm',
      { cuts: [{ stage: 2, x1: 0, y1: 30, x2: 501, y2: 30 }] },
    ],
  ])('refuses: %s', (message, wrong) => {
    expect(() => checkMap({ ...map, ...wrong })).toThrow(`cut map: ${message}`);
  });

  it('lets a blank lie turned', () => {
    const turned = { ...piece, x: 200, length: 30, width: 100, turned: true };
    expect(() => checkMap({ ...map, pieces: [piece, turned] })).not.toThrow();
  });
});
