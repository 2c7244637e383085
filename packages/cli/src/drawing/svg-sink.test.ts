import { describe, expect, it } from 'vitest';
import type { Drawing, Mark } from './drawing.js';
import { readSvg, rectBox, withClass } from './read-svg.test.support.js';
import { writeSvg } from './svg-sink.js';

const drawingOf = (marks: readonly Mark[]): Drawing => ({
  title: 'A <title>',
  description: '"described" & done',
  page: { x: -1.234, y: -2, width: 30, height: 40.006 },
  hatches: [],
  layers: [{ name: 'layer', marks }],
});

describe('writing SVG', () => {
  it('writes millimetres one to one, to the hundredth', () => {
    const root = readSvg(writeSvg(drawingOf([])))[0]?.attributes;
    expect(root).toMatchObject({
      width: '30mm',
      height: '40.01mm',
      viewBox: '-1.23 -2 30 40.01',
    });
  });

  it('keeps rectangles that touch touching', () => {
    const boxes = [0, 1, 2].map((index): Mark => {
      return { kind: 'rect', role: 'box', box: { x: index / 3, y: 0, width: 1 / 3, height: 1 } };
    });
    const written = withClass(readSvg(writeSvg(drawingOf(boxes))), 'box').map(rectBox);
    expect(written.map(({ x }) => x)).toEqual([0, 0.33, 0.67]);
    expect(written.map(({ x, width }) => Number((x + width).toFixed(2)))).toEqual([0.33, 0.67, 1]);
  });

  it('writes no minus zero and escapes what XML reserves', () => {
    const line: Mark = {
      kind: 'line',
      points: [
        { x: -0.001, y: 0 },
        { x: 1, y: -0 },
      ],
    };
    const svg = writeSvg(drawingOf([line]));
    expect(svg).toContain('points="0,0 1,0"');
    const [, title, description] = readSvg(svg);
    expect([title?.text, description?.text]).toEqual(['A <title>', '"described" & done']);
  });
});
