import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TextMark } from '../drawing/drawing.js';
import { holds, overlaps } from '../drawing/read-svg.test.support.js';
import { cutMaps } from '../packet/cut-maps.js';
import { anyLayoutPlan } from '../plan-file/random-plan.test.support.js';
import { layOut } from './lay-out.js';
import { PAPER, TYPE } from './paper.js';
import { anyCutMap } from './random-cut-map.test.support.js';
import { numbersTold, piecesTold } from './untold-cuts.test.support.js';

const anyPlannedMap = anyLayoutPlan.map((file) => {
  const [map] = cutMaps(file);
  if (map === undefined) throw new Error('no layout');
  return map;
});
const SLACK = 1e-6;
const RUNS = { numRuns: 60 };

const texts = (drawing: ReturnType<typeof layOut>): readonly TextMark[] =>
  drawing.layers.flatMap(({ marks }) => marks.filter((mark) => mark.kind === 'text'));

describe('the layout of a cut map', () => {
  it('keeps every text in its room, and every room on the page', () => {
    fc.assert(
      fc.property(anyCutMap, (map) => {
        const drawing = layOut(map);
        for (const mark of texts(drawing)) {
          expect(holds(mark.room, mark.box, SLACK), `${mark.role}: ${mark.text}`).toBe(true);
          expect(holds(drawing.page, mark.room, SLACK), mark.role).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it('lets no two texts overlap', () => {
    fc.assert(
      fc.property(anyCutMap, (map) => {
        const marks = texts(layOut(map));
        const boxes = marks.map(({ box }) => box);
        const clashes = overlaps(boxes, SLACK).map((pair) =>
          pair.map((index) => `${marks[index]?.role}: ${marks[index]?.text}`),
        );
        expect(clashes).toEqual([]);
      }),
      RUNS,
    );
  });

  it('prints no text smaller than 6 point where the page is as wide as the paper', () => {
    // 6 point of 1/72 in each is 2.117 mm.
    const sixPoint = (6 / 72) * 25.4;
    fc.assert(
      fc.property(anyCutMap, (map) => {
        const drawing = layOut(map);
        const printed = PAPER.width / drawing.page.width;
        for (const { size } of texts(drawing)) {
          expect(size * printed).toBeGreaterThanOrEqual(sixPoint - SLACK);
        }
      }),
      RUNS,
    );
    expect(TYPE.least).toBeGreaterThanOrEqual(sixPoint);
  });

  it('fits the height of the paper too, for 1 to 400 pieces, unless blanks are many', () => {
    fc.assert(
      fc.property(fc.oneof(anyCutMap, anyPlannedMap), (map) => {
        const drawing = layOut(map);
        fc.pre(new Set(map.pieces.map(({ number }) => number)).size <= 30);
        const high = (drawing.page.height / drawing.page.width) * PAPER.width;
        expect(high).toBeLessThanOrEqual(PAPER.height + SLACK);
      }),
      RUNS,
    );
  });

  it('numbers every piece in it, or says in words where it lies', () => {
    fc.assert(
      fc.property(anyCutMap, (map) => {
        const marks = texts(layOut(map));
        const numbers = marks.filter(({ role }) => role === 'number').length;
        const words = marks
          .filter(({ role }) => role === 'unnumbered')
          .map(({ text }) => text)
          .join(' ');
        const told = piecesTold(words);
        expect(numbers + told).toBe(map.pieces.length);
      }),
      RUNS,
    );
  });

  it('numbers every cut once in the order it is made, on the sheet or in the foot', () => {
    fc.assert(
      fc.property(anyCutMap, (map) => {
        const marks = texts(layOut(map));
        const shown = marks.flatMap(({ role, text }) =>
          role === 'cut-number' ? [Number(text)] : [],
        );
        const foot = marks.flatMap(({ role, text }) => (role === 'untold-cuts' ? [text] : []));
        const told = numbersTold(foot.join(' '));
        expect([...shown, ...told].sort((one, other) => one - other)).toEqual(
          map.cuts.map((_, index) => index + 1),
        );
      }),
      RUNS,
    );
  });
});
