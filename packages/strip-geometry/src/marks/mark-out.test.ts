import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyNeutralAxis, anyOutline, between, orSkip } from '../any-outline.test.support.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { develop } from '../develop.js';
import { heart } from '../outlines/heart.js';
import { oval } from '../outlines/oval.js';
import { rectangle } from '../outlines/rectangle.js';
import { regularPolygon } from '../outlines/regular-polygon.js';
import { reversedPath } from '../segment.js';
import { makeStrip } from '../strip.js';
import { markOut } from './mark-out.js';

const plain = { depth: 25, hem: 6, tab: 10, bendRule: zeroThickness() };
const anyMark = between(0.1, 2);

test('marks are ascending, inside the strip, and within half a mark of true', () => {
  fc.assert(
    fc.property(anyOutline, anyNeutralAxis, anyMark, (outline, bendRule, smallestMark) => {
      const strip = orSkip(() => makeStrip({ ...plain, tab: 0, outline, bendRule }));
      const { marks, crowded } = markOut(strip, smallestMark);
      let [before, exactBefore] = [0, 0];
      marks.forEach(({ at, exact }, index) => {
        expect(at).toBeGreaterThanOrEqual(before);
        expect(exact).toBeGreaterThan(exactBefore);
        expect(exact).toBeLessThanOrEqual(strip.length + 1e-9);
        expect(Math.abs(at - exact)).toBeLessThanOrEqual((smallestMark / 2) * (1 + 1e-9));
        if (at === before && index > 0) {
          expect(crowded.map((pair) => pair.index)).toContain(index - 1);
        }
        [before, exactBefore] = [at, exact];
      });
    }),
  );
});

test('every bend and every curve is marked once', () => {
  fc.assert(
    fc.property(anyOutline, anyNeutralAxis, (outline, bendRule) => {
      const strip = orSkip(() => makeStrip({ ...plain, tab: 0, outline, bendRule }));
      const { marks } = markOut(strip, 0.5);
      const bends = marks.flatMap(({ bend, exact }) => (bend ? [{ ...bend, at: exact }] : []));
      expect(bends).toEqual(
        strip.bends.map(({ number, at, direction, angle }) => ({ number, at, direction, angle })),
      );
      const ends = marks.flatMap(({ curveEnds }) => (curveEnds ? [curveEnds.number] : []));
      const all = strip.curves.map((_, index) => index + 1);
      expect(ends).toEqual(all);
      // The first curve may start at the square end, which has no mark.
      const starts = marks.flatMap(({ curveStarts }) => (curveStarts ? [curveStarts.number] : []));
      expect(all.slice(all.length - starts.length)).toEqual(starts);
      expect(starts.length).toBeGreaterThanOrEqual(all.length - 1);
    }),
  );
});

test('run the other way, the marks are mirrored and the bends as they were', () => {
  fc.assert(
    fc.property(anyOutline, anyNeutralAxis, (outline, bendRule) => {
      const lay = (closed: typeof outline.segments, metal: 'inside' | 'outside') =>
        orSkip(() => develop(closed, { bendRule, closed: false, metal }));
      const there = lay(outline.segments, 'outside');
      // Backwards, the metal lies to the other side of the travel and each bend turns the other way.
      const back = lay(reversedPath(outline.segments), 'inside');
      expect(back.length).toBeCloseTo(there.length, 8);
      const forward = markOut(there, 0.01).marks.filter(({ bend }) => bend);
      const backward = markOut(back, 0.01)
        .marks.filter(({ bend }) => bend)
        .reverse();
      expect(backward).toHaveLength(forward.length);
      forward.forEach(({ exact, bend }, index) => {
        const partner = backward[index];
        expect(partner?.exact).toBeCloseTo(there.length - exact, 8);
        expect(partner?.bend?.angle).toBeCloseTo(bend?.angle ?? Number.NaN, 6);
        expect(partner?.bend?.direction).toBe(bend?.direction === 'in' ? 'out' : 'in');
      });
    }),
  );
});

test('a rounded rectangle: flats and curves take turns, and the seam ends in a flat', () => {
  const outline = rectangle.draw({ long: 90, wide: 40, 'corner radius': 8 });
  const { marks, crowded } = markOut(makeStrip({ ...plain, outline }), 0.5);
  // By hand: 74, then quarter circles of 4 pi = 12.566 between flats of 24 and 74.
  const quarter = 4 * Math.PI;
  const places = [74, quarter, 24, quarter, 74, quarter, 24, quarter];
  let at = 0;
  expect(marks.map(({ exact }) => exact)).toEqual(
    places.map((length) => {
      at += length;
      return expect.closeTo(at, 9);
    }),
  );
  expect(marks[0]).toMatchObject({
    at: 74,
    curveStarts: { number: 1, radius: 8, even: true, direction: 'in' },
  });
  expect(marks[1]).toMatchObject({ at: 86.5, curveEnds: { number: 1 } });
  expect(marks[7]).toMatchObject({ curveEnds: { number: 4 }, seam: 'ends' });
  expect(crowded).toEqual([]);
});

test('a curve beside a bend starts at the bend’s mark', () => {
  const bendRule = neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 });
  const strip = makeStrip({ ...plain, bendRule, outline: heart.draw({ across: 80 }) });
  const { marks } = markOut(strip, 0.5);
  const atBends = marks.filter(
    ({ bend, curveEnds, curveStarts }) => bend && (curveEnds || curveStarts),
  );
  expect(atBends.length).toBeGreaterThan(0);
});

test('an oval’s last mark is where its last curve and the outline end', () => {
  const strip = makeStrip({ ...plain, outline: oval.draw({ long: 90, wide: 40 }) });
  const last = markOut(strip, 0.5).marks.at(-1);
  expect(last?.exact).toBeCloseTo(strip.developed, 9);
  expect(last?.seam).toBe('ends');
});

test('marks nearer than the rule can show are listed', () => {
  const outline = regularPolygon.draw({ sides: 12, side: 3 });
  const strip = makeStrip({ ...plain, tab: 3, outline });
  expect(markOut(strip, 3).crowded).toEqual([]);
  const { crowded } = markOut(strip, 4);
  expect(crowded).toHaveLength(11);
  expect(crowded[0]).toEqual({ index: 0, apart: expect.closeTo(3, 9) });
});

test('refuses a mark that is no length', () => {
  const strip = makeStrip({ ...plain, outline: heart.draw({ across: 80 }) });
  expect(() => markOut(strip, 0)).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'mark' }),
  );
});
