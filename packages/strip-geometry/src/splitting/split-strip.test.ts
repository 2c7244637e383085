import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyNeutralAxis, anyOutline, between, orSkip } from '../any-outline.test.support.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { markOut } from '../marks/mark-out.js';
import { circle } from '../outlines/circle.js';
import { ellipse } from '../outlines/ellipse.js';
import { heart } from '../outlines/heart.js';
import { oval } from '../outlines/oval.js';
import { rectangle } from '../outlines/rectangle.js';
import { regularPolygon } from '../outlines/regular-polygon.js';
import { refold } from '../refold/refold.js';
import { groovedSeam } from '../seams/grooved-seam.js';
import { makeStrip, type Strip } from '../strip.js';
import { StripError } from '../strip-error.js';
import { splitStrip } from './split-strip.js';

const bench = { depth: 25, hem: 6, tab: 10, bendRule: zeroThickness() };
const metal = neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 });

function turnOf({ runs }: Strip): number {
  return runs.reduce((sum, run) => {
    return run.kind === 'flat' ? sum : sum + run.angle * (run.direction === 'in' ? 1 : -1);
  }, 0);
}

test('a strip that fits stays whole', () => {
  const strip = makeStrip({ ...bench, outline: circle.draw({ across: 80 }) });
  expect(splitStrip(strip, strip.length)).toEqual([{ strip, from: 0, bendsBefore: 0 }]);
});

// By hand: eight sides of 40 and a tab of 10 are 330 long. Two halves of 160 and a tab each.
test('an octagon in halves, each with its own tab and its bends counted from 1', () => {
  const strip = makeStrip({ ...bench, outline: regularPolygon.draw({ sides: 8, side: 40 }) });
  const parts = splitStrip(strip, 200);
  expect(parts.map(({ from, bendsBefore }) => [from, bendsBefore])).toEqual([
    [0, 0],
    [expect.closeTo(160, 6), 4],
  ]);
  for (const { strip: part } of parts) {
    expect(part.length).toBeCloseTo(170, 6);
    expect(part.tab).toBe(10);
    expect(part.bends.map(({ number }) => number)).toEqual([1, 2, 3, 4]);
    expect(part.bends.map(({ at }) => at)).toEqual(
      [40, 80, 120, 160].map((at) => expect.closeTo(at, 6)),
    );
  }
});

test('parts keep all of the strip, fit, and are cut neither in bends nor in tight curves', () => {
  fc.assert(
    fc.property(
      anyOutline,
      anyNeutralAxis,
      between(0, 12),
      between(0.15, 0.95),
      (outline, bendRule, tab, share) => {
        const strip = orSkip(() => {
          try {
            return makeStrip({ ...bench, tab, bendRule, outline });
          } catch (error) {
            fc.pre(!(error instanceof StripError));
            throw error;
          }
        });
        const stock = share * strip.length;
        let parts: ReturnType<typeof splitStrip>;
        try {
          parts = splitStrip(strip, stock);
        } catch (error) {
          fc.pre(!(error instanceof StripError));
          throw error;
        }
        expect(parts.length).toBeGreaterThan(1);
        const sum = parts.reduce((total, { strip: part }) => total + part.developed, 0);
        expect(sum).toBeCloseTo(strip.developed, 6);
        expect(parts.reduce((total, { strip: part }) => total + turnOf(part), 0)).toBeCloseTo(
          360,
          5,
        );
        const places = parts.flatMap(({ strip: part, from, bendsBefore }) => {
          expect(part.length).toBeLessThanOrEqual(stock + 1e-6);
          expect(part.length).toBeCloseTo(part.developed + tab, 9);
          expect(part.runs[0]?.from).toBeCloseTo(0, 6);
          expect(part.runs.at(-1)?.to).toBeCloseTo(part.developed, 6);
          return part.bends.map(({ number, at }) => [number + bendsBefore, at + from]);
        });
        expect(places).toEqual(
          strip.bends.map(({ number, at }) => [number, expect.closeTo(at, 6)]),
        );
        const isPlace = placeTest(strip);
        expect(parts.slice(1).every(({ from }) => isPlace(from))).toBe(true);
        // Looked for at a grid of places, in as long steps as there are, no division has fewer parts.
        const longest = stock - tab;
        const ends = strip.runs.map(({ to }) => to);
        const steps = Array.from({ length: 300 }, (_, step) => (strip.developed * step) / 300);
        const grid = [...steps, ...ends].filter(
          (place) => place < strip.developed && isPlace(place),
        );
        let [reached, count] = [0, 1];
        while (reached + longest < strip.developed && count < parts.length) {
          reached = Math.max(...grid.filter((place) => place <= reached + longest), reached);
          count++;
        }
        expect(reached + longest < strip.developed || count >= parts.length).toBe(true);
      },
    ),
  );
});

/** Whether a tucked tab that starts at a place lies clear of bends and tight curves, and pliers hold it. */
function placeTest({ runs, tab }: Strip) {
  return (place: number) => {
    const reach = place + Math.max(tab, 3);
    const end = runs.at(-1)?.to ?? 0;
    const under = runs.filter(({ from, to }) => to > place + 1e-6 && from < reach - 1e-6);
    const isClear = under.every((run) => {
      return run.kind === 'flat' || (run.kind === 'curve' && run.radius >= 25);
    });
    return isClear && reach <= end + 1e-6;
  };
}

// A heart 9 in wide is 692 mm round, its seam at the point with a flat of 138 mm on either side.
// From 20 in stock it takes two parts of at most 495 mm with their tabs. By hand: cut on the first
// flat the second part would be 567 mm at least, on the second flat the first part 555 mm; so the cut
// lies in the curves between, and right after the cleft it makes both parts alike.
test('a large heart is divided in as few parts as its length asks for', () => {
  const inch = 25.4;
  const outline = heart.draw({ across: 9 * inch });
  const strip = makeStrip({ ...bench, tab: inch / 2, outline });
  const parts = splitStrip(strip, 20 * inch);
  expect(parts.map(({ strip: part }) => part.developed)).toEqual(
    [1, 1].map(() => expect.closeTo(strip.developed / 2, 6)),
  );
  expect(parts[0]?.strip.bends.map(({ at }) => at)).toEqual([
    expect.closeTo(strip.developed / 2, 6),
  ]);
  // Three parts from 12 in: the second seam can be on the far flat, and so it is.
  const [, second, third] = splitStrip(strip, 12 * inch);
  const kinds = [second, third].map((part) => {
    const at = part?.from ?? Number.NaN;
    return strip.runs.find(({ from, to }) => from <= at + 1e-6 && to > at + 1e-6)?.kind;
  });
  expect(kinds).toEqual(['curve', 'flat']);
});

// By hand: a rectangle 400 x 40 whose ends are rounded off with a radius of 20 is 845.66 round:
// 360 flat, 62.83 round the end, 360, 62.83. Two parts of at most 600 with the tab are cut on
// the flats, evenly, and never on the tight ends.
test('an oval in two: at flats, evenly, never round its tight ends', () => {
  const strip = makeStrip({ ...bench, outline: oval.draw({ long: 400, wide: 40 }) });
  expect(strip.developed).toBeCloseTo(720 + 40 * Math.PI, 6);
  const parts = splitStrip(strip, 600);
  expect(parts).toHaveLength(2);
  expect(parts.map(({ strip: part }) => part.developed)).toEqual(
    [1, 1].map(() => expect.closeTo(360 + 20 * Math.PI, 6)),
  );
  const [, second] = parts;
  expect(
    strip.runs.find(({ from, to }) => {
      const at = second?.from ?? 0;
      return from <= at + 1e-6 && to > at + 1e-6;
    })?.kind,
  ).toBe('flat');
});

// By hand: a hexagon of six sides of 100 in stock of 235: 600 / 225 asks for three parts, and
// after 200 and 400 there is a corner with a flat after it. In stock of 150, less than two sides
// with their tab fit: five parts would be 120 each, cut at 120, 240, 360 and 480, all of which
// leave a tab's room on their flats.
test.each([
  [235, [200, 400]],
  [150, [120, 240, 360, 480]],
])('a hexagon from stock of %d', (stock, cuts) => {
  const strip = makeStrip({ ...bench, outline: regularPolygon.draw({ sides: 6, side: 100 }) });
  const parts = splitStrip(strip, stock);
  expect(parts.slice(1).map(({ from }) => from)).toEqual(cuts.map((cut) => expect.closeTo(cut, 6)));
});

// A square of four flats of 30 with curves of 157 between them, 748 in all: a part from flat to flat
// is 187 to 217, or twice that. Two parts are cut on a flat. Three of at most 260 are not: two
// quarters are more than that, and the two cuts on flats would leave half of it; so one lies in a curve.
test('few parts come before flats', () => {
  const outline = rectangle.draw({ long: 230, wide: 230, 'corner radius': 100 });
  const strip = makeStrip({ ...bench, outline });
  const flats = strip.runs.filter(({ kind }) => kind === 'flat').length;
  expect(flats).toBe(4);
  const kindsOf = (stock: number) =>
    splitStrip(strip, stock)
      .slice(1)
      .map(
        ({ from }) =>
          strip.runs.find((run) => run.from <= from + 1e-6 && run.to > from + 1e-6)?.kind,
      );
  expect(kindsOf(strip.developed / 2 + 20)).toEqual(['flat']);
  const three = kindsOf(strip.developed / 3 + 11);
  expect(three).toHaveLength(2);
  expect(three).toContain('curve');
});

test('flats are cut before curves, and gentle curves where flats will not do', () => {
  const outline = rectangle.draw({ long: 200, wide: 120, 'corner radius': 30 });
  const strip = makeStrip({ ...bench, outline });
  for (const { from } of splitStrip(strip, 320).slice(1)) {
    expect(strip.runs.find((run) => run.from <= from && run.to > from + 1e-6)?.kind).toBe('flat');
  }
  const ring = makeStrip({ ...bench, outline: circle.draw({ across: 300 }) });
  const halves = splitStrip(ring, 500);
  expect(halves).toHaveLength(2);
  for (const { strip: half } of halves) {
    expect(half.developed).toBeCloseTo((Math.PI * 300) / 2, 6);
    expect(half.curves[0]?.angle).toBeCloseTo(180, 5);
  }
  expect(() => splitStrip(ring, 500, { gentleRadius: 151 })).toThrow(StripError);
});

test('each part of an ellipse keeps its own piece of the drawing', () => {
  const strip = makeStrip({
    ...bench,
    bendRule: metal,
    outline: ellipse.draw({ across: 280, high: 200 }),
  });
  const parts = splitStrip(strip, 300);
  expect(parts.length).toBeGreaterThan(2);
  const shapes = parts.flatMap(({ strip: part }) =>
    part.runs.flatMap((run) => (run.kind === 'curve' ? [run.shape] : [])),
  );
  expect(shapes.length).toBeGreaterThan(strip.runs.length);
  shapes.slice(1).forEach(({ segment, start }, index) => {
    const before = shapes[index];
    expect(start).toBeCloseTo(before?.segment === segment ? before.end : 0, 4);
  });
  for (const { strip: part } of parts) {
    const { closureGap, largestDeviation } = refold(part, 0.5);
    expect(closureGap).toBeLessThan(0.5);
    expect(largestDeviation).toBeLessThan(0.5);
  }
});

test('the marks of a part run from its own square end', () => {
  const strip = makeStrip({
    ...bench,
    bendRule: metal,
    outline: rectangle.draw({ long: 150, wide: 90 }),
  });
  const parts = splitStrip(strip, 300);
  expect(parts).toHaveLength(2);
  for (const { strip: part } of parts) {
    const { marks } = markOut(part, 0.5);
    expect(marks.flatMap(({ bend }) => (bend ? [bend.number] : []))).toEqual([1, 2]);
    expect(marks.at(-1)?.exact).toBeLessThanOrEqual(part.length - part.tab + 1e-9);
  }
});

test('a grooved seam has its room on both sides of every joint', () => {
  const outline = regularPolygon.draw({ sides: 6, side: 60 });
  const strip = makeStrip({ ...bench, outline, seam: groovedSeam(5) });
  const parts = splitStrip(strip, 220);
  expect(parts).toHaveLength(2);
  for (const { strip: part, from } of parts.slice(1)) {
    expect(part.length).toBeCloseTo(part.developed + 15, 9);
    expect(part.runs[0]?.from).toBeCloseTo(5, 6);
    const flat = strip.runs.find((run) => run.from - 5 <= from && run.to - 5 >= from);
    expect(flat?.kind).toBe('flat');
    expect(from - ((flat?.from ?? 0) - 5)).toBeGreaterThanOrEqual(5 - 1e-6);
    expect((flat?.to ?? 0) - 5 - from).toBeGreaterThanOrEqual(10 - 1e-6);
  }
});

test('says how long the stock must be where no division fits', () => {
  const strip = makeStrip({ ...bench, outline: regularPolygon.draw({ sides: 3, side: 100 }) });
  // Between two places to cut, 90 mm of each side, lies the rest with its bend: 10 mm and a tab.
  expect(splitStrip(strip, 25).length).toBeGreaterThan(5);
  expect(() => splitStrip(strip, 15)).toThrow('20 mm long');
  expect(() => splitStrip(strip, 5)).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'stockLength' }),
  );
});

test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses stock of %d', (stock) => {
  const strip = makeStrip({ ...bench, outline: circle.draw({ across: 80 }) });
  expect(() => splitStrip(strip, stock)).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'stockLength' }),
  );
});
