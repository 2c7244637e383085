import { describe, expect, it } from 'vitest';
import type { CutMap } from './cut-map.js';
import { drawLegendTable, legendRows } from './legend-table.js';
import { millimetres } from './random-cut-map.test.support.js';

const piece = { number: 9, name: 'Acorn', x: 0, y: 0, length: 100, width: 30, turned: false };
const map: CutMap = {
  title: 'Order',
  number: 1,
  of: 1,
  count: 1,
  stock: { name: 'A', kind: 'sheet', length: 500, width: 300 },
  pieces: [piece, { ...piece, number: 2 }, { ...piece, length: 30, width: 100, turned: true }],
  cuts: [],
  remnants: [],
  printLength: millimetres,
};

describe('the legend', () => {
  it('counts each blank, by number, with its size before it was turned', () => {
    expect(legendRows(map)).toEqual([
      { number: 2, name: 'Acorn', size: '100 × 30 mm', count: 1 },
      { number: 9, name: 'Acorn', size: '100 × 30 mm', count: 2 },
    ]);
  });

  it('goes into two tables side by side when it is long', () => {
    const rows = Array.from({ length: 11 }, (_, index) => {
      return { number: index + 1, name: 'Acorn', size: '100 × 30 mm', count: 1 };
    });
    const drawn = drawLegendTable(rows, { left: 0, top: 0, width: 185, unit: 1 });
    const heads = drawn.marks.filter((mark) => mark.kind === 'text' && mark.text === 'Blank');
    expect(heads.length).toBe(2);
    const single = drawLegendTable(rows.slice(1), { left: 0, top: 0, width: 185, unit: 1 });
    expect(drawn.height).toBeLessThan(single.height);
  });
});
