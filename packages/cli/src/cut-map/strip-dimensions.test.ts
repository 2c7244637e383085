import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { railAlong } from './rail.js';
import { anyCutMap, millimetres } from './random-cut-map.test.support.js';
import { stripDimensions } from './strip-dimensions.js';
import { readStrips, type Strips } from './strips.js';

const stock = { name: 'A', kind: 'sheet', length: 700, width: 500 } as const;
const page = { x: -1000, y: -2000, width: 3000, height: 4000 };
const rail = railAlong('left', stock);

/** Strips of the given widths from the lower edge up. */
function stripsOf(widths: readonly number[]): Strips {
  const spans = widths.map((width, index) => {
    const from = widths.slice(0, index).reduce((sum, each) => sum + each, 0);
    return { from, to: from + width };
  });
  return { cutsRun: 'x', extent: spans.at(-1)?.to ?? 0, start: 0, spans, firstCuts: [] };
}

function widthsAt(unit: number, widths: readonly number[]) {
  const { marks, leftOut } = stripDimensions(stripsOf(widths), rail, unit, page, millimetres);
  return { leftOut, texts: marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])) };
}

describe('strip widths at the edge of the sheet', () => {
  it('stand one by one where there is room', () => {
    expect(widthsAt(1, [30, 30, 40])).toEqual({
      leftOut: 0,
      texts: ['30 mm', '30 mm', '40 mm'],
    });
  });

  it('are shared by equal neighbours where strips are narrow', () => {
    // A line of text is about 18 mm high at this unit.
    expect(widthsAt(5, [100, 9, 9, 9, 100, 9])).toEqual({
      leftOut: 0,
      texts: ['100 mm', '3 × 9 mm', '100 mm', '9 mm'],
    });
  });

  it('stand behind the letters by which the cutting list calls the strips', () => {
    const strips = stripsOf([100, 9, 9, 9, 9]);
    const letters = ['A', 'B', 'C', 'D'];
    const spans = strips.spans.map((span, index) => {
      const letter = letters[index];
      return letter === undefined ? span : { ...span, letter };
    });
    const { marks } = stripDimensions({ ...strips, spans }, rail, 5, page, millimetres);
    expect(marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))).toEqual([
      'A: 100 mm',
      'B–D: 3 × 9 mm',
      '9 mm',
    ]);
  });

  it('are left out for the narrowest strips where nothing else helps, and counted', () => {
    const { leftOut, texts } = widthsAt(10, [1, 100, 2, 3, 1, 2, 1]);
    expect(leftOut).toBeGreaterThan(0);
    expect(texts).toContain('100 mm');
    expect(texts.length + leftOut).toBe(7);
  });

  it('need no label for a single strip', () => {
    expect(widthsAt(1, [300])).toEqual({ leftOut: 0, texts: [] });
  });

  it('account for every strip', () => {
    fc.assert(
      fc.property(anyCutMap, fc.integer({ min: 1, max: 9 }), (map, unit) => {
        const strips = readStrips(map);
        const { marks, leftOut } = stripDimensions(strips, rail, unit, page, millimetres);
        const told = marks
          .flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
          .reduce((sum, text) => sum + Number(/^(\d+) × /u.exec(text)?.[1] ?? 1), 0);
        const expected = strips.spans.length < 2 ? 0 : strips.spans.length;
        expect(told + leftOut).toBe(expected);
      }),
    );
  });
});
