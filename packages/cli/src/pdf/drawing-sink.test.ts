import { describe, expect, it } from 'vitest';
import type { Drawing, Mark, TextMark } from '../drawing/drawing.js';
import { writeSvg } from '../drawing/svg-sink.js';
import { describeInChromium } from '../rendering/chromium.test.support.js';
import type { GreyImage } from '../rendering/image.test.support.js';
import { askPoppler, hasPoppler, renderPdf } from '../rendering/poppler.test.support.js';
import { renderSvg } from '../rendering/svg-in-chromium.test.support.js';
import { PAPERS } from './paper.js';
import { writePdf } from './write-pdf.js';

const mustRun = process.env.CI !== undefined;
const page = { x: -20, y: -50, width: 190, height: 200 };

const drawingOf = (marks: readonly Mark[]): Drawing => ({
  title: 'Shapes',
  description: 'Shapes',
  page,
  hatches: [
    {
      id: 'one',
      spacing: 3,
      strokeWidth: 0.6,
      stroke: '#000000',
      ground: '#dddddd',
      crossed: false,
    },
    {
      id: 'two',
      spacing: 4,
      strokeWidth: 0.5,
      stroke: '#000000',
      ground: '#ffffff',
      crossed: true,
    },
  ],
  layers: [{ name: 'shapes', marks }],
});

const pdfOf = (drawing: Drawing) =>
  writePdf(
    {
      title: '',
      summary: [],
      key: '',
      sections: [
        {
          id: 'a',
          title: '',
          onNewPage: true,
          blocks: [{ kind: 'picture', drawing, trueScale: true }],
        },
      ],
    },
    'a4',
  );

const text = (own: Partial<TextMark>): TextMark => {
  const box = { x: 0, y: 0, width: 100, height: 10 };
  const at = { x: 50, y: 50 };
  return {
    kind: 'text',
    role: 'any',
    text: 'Sailboat',
    at,
    anchor: 'start',
    size: 4,
    bold: false,
    upright: false,
    colour: '#000000',
    box,
    room: box,
    ...own,
  };
};

/** The box of the one word of that text, in millimetres of the drawing. */
async function boxOfWord(mark: TextMark) {
  // A corner mark tells where the drawing lies on the page.
  const corner = text({ text: 'corner', at: { x: page.x, y: 0 }, size: 3 });
  const said = askPoppler('boxes of words', await pdfOf(drawingOf([corner, mark])));
  const boxes = [...said.matchAll(/xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">(.+?)</g)];
  const find = (word: string) => {
    const found = boxes.find((match) => match[5] === word);
    if (found === undefined) throw new Error(`no ${word}`);
    return found.slice(1, 5).map((points) => (Number(points) * 25.4) / 72);
  };
  const [left = 0] = find('corner');
  const [from = 0, top = 0, to = 0, foot = 0] = find(mark.text);
  const shift = page.x - left;
  return { from: from + shift, to: to + shift, width: to - from, height: foot - top };
}

describe.skipIf(!hasPoppler && !mustRun)('text in a drawing', () => {
  it('begins, ends or has its middle where it is anchored', async () => {
    const start = await boxOfWord(text({}));
    expect(start.from).toBeCloseTo(50, 1);
    const end = await boxOfWord(text({ anchor: 'end' }));
    expect(end.to).toBeCloseTo(50, 1);
    const middle = await boxOfWord(text({ anchor: 'middle' }));
    expect((middle.from + middle.to) / 2).toBeCloseTo(50, 1);
  });

  it('is set smaller where it would be wider than its box', async () => {
    const wide = await boxOfWord(text({ text: 'WWWWWW' }));
    expect(wide.width).toBeGreaterThan(20);
    const box = { x: 50, y: 45, width: 12, height: 6 };
    const narrow = await boxOfWord(text({ text: 'WWWWWW', box, room: box }));
    expect(narrow.width).toBeCloseTo(12, 1);
  });

  it('reads up the page where it is upright', async () => {
    const lying = await boxOfWord(text({}));
    const box = { x: 45, y: 0, width: 10, height: 100 };
    const upright = await boxOfWord(text({ upright: true, box, room: box }));
    expect(upright.height).toBeCloseTo(lying.width, 1);
  });
});

/** How dark each square of so many millimetres is on the whole. */
function shades(image: GreyImage, left: number, top: number, cell: number): readonly number[] {
  const dots = image.dotsPerMillimetre;
  const across = Math.floor(page.width / cell);
  return Array.from({ length: across * Math.floor(page.height / cell) }, (_, index) => {
    const [column, row] = [index % across, Math.floor(index / across)];
    let [sum, count] = [0, 0];
    for (let y = Math.round((top + row * cell) * dots); y < (top + (row + 1) * cell) * dots; y++) {
      const first = Math.round((left + column * cell) * dots);
      for (let x = first; x < (left + (column + 1) * cell) * dots; x++) {
        sum += image.dark(x, y);
        count++;
      }
    }
    return sum / count;
  });
}

describeInChromium('shapes in a drawing', (browser) => {
  it.skipIf(!hasPoppler && !mustRun)(
    'come out in the PDF as Poppler renders it as in the SVG as Chromium shows it',
    async () => {
      const corners = (x: number, y: number) => [
        { x, y },
        { x: x + 50, y: y + 10 },
        { x: x + 20, y: y + 45 },
      ];
      const thick = { stroke: '#14304d', strokeWidth: 1.2 };
      const drawing = drawingOf([
        { kind: 'rect', box: { x: 0, y: -40, width: 60, height: 40 }, fill: 'url(#one)', ...thick },
        { kind: 'rect', box: { x: 80, y: -40, width: 60, height: 40 }, fill: 'url(#two)' },
        { kind: 'polygon', points: corners(0, 10), fill: 'url(#two)', ...thick, dashes: [5, 2, 1] },
        { kind: 'polygon', points: corners(70, 10), fill: '#88aacc', stroke: '#000000' },
        { kind: 'line', points: corners(10, 80), ...thick, dashes: [6, 3] },
        { kind: 'rect', box: { x: 90, y: 80, width: 50, height: 30 }, rounding: 8, ...thick },
        { kind: 'rect', box: { x: 90, y: 120, width: 50, height: 20 }, fill: 'none' },
      ]);
      const pages = renderPdf(await pdfOf(drawing), 150);
      const image = pages.at(-1);
      if (image === undefined) throw new Error('no page');
      const shown = shades(await renderSvg(browser(), writeSvg(drawing), 2), 0, 0, 5);
      // The section's empty title is above the picture: its place is found by the best match.
      const { side, top } = PAPERS.a4;
      const differences = Array.from({ length: 150 }, (_, step) => {
        const printed = shades(image, side, top + step * 0.1, 5);
        return Math.max(...printed.map((shade, index) => Math.abs(shade - (shown[index] ?? 0))));
      });
      expect(Math.max(...shown)).toBeGreaterThan(0.3);
      expect(Math.min(...differences)).toBeLessThan(0.05);
    },
  );
});
