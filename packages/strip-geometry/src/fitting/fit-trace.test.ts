import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyOutlineOf } from '../any-outline.test.support.js';
import { perimeter } from '../measure.js';
import { families } from '../outlines/families.js';
import { heart } from '../outlines/heart.js';
import { distance } from '../point.js';
import { FITTING_TOLERANCE, fitTrace, isTraced } from './fit-trace.js';
import { corners, farthestFrom, polyline, traced } from './traced.test.support.js';

test('a circle of 400 lines becomes one arc', () => {
  const points = Array.from({ length: 400 }, (_, index) => {
    const angle = (2 * Math.PI * index) / 400;
    return { x: 35 * Math.cos(angle), y: 35 * Math.sin(angle) };
  });
  const fitted = fitTrace(polyline(points));
  expect(fitted.segments.map(({ kind }) => kind)).toEqual(['arc']);
  expect(perimeter(fitted)).toBeCloseTo(70 * Math.PI, 1);
});

test('a traced heart becomes the lines, arcs and two corners it was drawn with', () => {
  const drawn = heart.draw({ across: 100 });
  for (const noise of [0, 0.05]) {
    const fitted = fitTrace(traced(drawn, noise));
    expect(fitted.segments).toHaveLength(4);
    const [found, wanted] = [corners(fitted), corners(drawn)];
    expect(found).toHaveLength(2);
    for (const { at, turn } of wanted) {
      const nearest = found.find((corner) => distance(corner.at, at) < 0.3);
      expect(nearest?.turn).toBeCloseTo(turn, -1);
    }
  }
});

describe('every family, traced as 400 lines', () => {
  test.each(
    families.flatMap((family) => [0, 0.05].map((noise) => [family.name, noise, family] as const)),
  )('%s with noise of %d mm', (_, noise, family) => {
    const drawn = family.draw(family.example);
    const trace = traced(drawn, noise);
    const fitted = fitTrace(trace);
    expect(farthestFrom(fitted, trace)).toBeLessThanOrEqual(FITTING_TOLERANCE);
    expect(farthestFrom(trace, fitted)).toBeLessThanOrEqual(FITTING_TOLERANCE);
    // As few pieces as it was drawn with, but for an ellipse, which is no arc.
    const most = family.name === 'ellipse' ? 12 : drawn.segments.length + 4;
    expect(fitted.segments.length).toBeLessThanOrEqual(most);
    // Each corner that turns 30 degrees or more is found where it was drawn, and no others.
    const wanted = corners(drawn).filter(({ turn }) => Math.abs(turn) >= 30);
    const found = corners(fitted).filter(({ turn }) => Math.abs(turn) >= 30);
    expect(found).toHaveLength(wanted.length);
    for (const { at } of wanted) {
      expect(Math.min(...found.map((corner) => distance(corner.at, at)))).toBeLessThan(0.6);
    }
  });
});

// Over the whole range of sizes the fit may give up and leave the trace as it is, but what it
// returns is within the tolerance.
test('any outline: the fit is within the tolerance of its trace', () => {
  const anyTrace = fc.oneof(
    ...['star', 'heart', 'crescent', 'regular polygon'].flatMap((name) => anyOutlineOf[name] ?? []),
  );
  fc.assert(
    fc.property(anyTrace, fc.integer({ min: 1, max: 1e6 }), fc.boolean(), (drawn, seed, noisy) => {
      const trace = traced(drawn, noisy ? 0.05 : 0, seed, 200);
      const fitted = fitTrace(trace);
      expect(fitted.segments.length).toBeLessThanOrEqual(trace.segments.length);
      if (fitted !== trace) {
        expect(farthestFrom(fitted, trace)).toBeLessThanOrEqual(FITTING_TOLERANCE);
        expect(farthestFrom(trace, fitted)).toBeLessThanOrEqual(FITTING_TOLERANCE);
      }
    }),
    { numRuns: 10, endOnFailure: true },
  );
});

test('a trace that cuts its corners off gets short lines across them', () => {
  const square = Array.from({ length: 4 }, (_, side) => side).flatMap((side) =>
    Array.from({ length: 50 }, (_, step) => {
      const along = 0.5 + step;
      const [x, y] = [along - 25, -25];
      const [c, s] = [[1, 0, -1, 0][side] ?? 0, [0, 1, 0, -1][side] ?? 0];
      return { x: c * x - s * y, y: s * x + c * y };
    }),
  );
  const trace = polyline(square);
  const fitted = fitTrace(trace);
  expect(fitted.segments.length).toBeLessThanOrEqual(8);
  expect(farthestFrom(fitted, trace)).toBeLessThanOrEqual(FITTING_TOLERANCE);
  expect(farthestFrom(trace, fitted)).toBeLessThanOrEqual(FITTING_TOLERANCE);
});

test('a tighter tolerance is kept too', () => {
  const trace = traced(heart.draw({ across: 80 }), 0.01);
  const fitted = fitTrace(trace, 0.05);
  expect(fitted.segments.length).toBeLessThanOrEqual(10);
  expect(farthestFrom(trace, fitted)).toBeLessThanOrEqual(0.05);
  expect(farthestFrom(fitted, trace)).toBeLessThanOrEqual(0.05);
});

test('what cannot be had in fewer pieces stays as it is', () => {
  const square = polyline([
    { x: 0, y: 0 },
    { x: 40, y: 0 },
    { x: 40, y: 40 },
    { x: 0, y: 40 },
  ]);
  expect(fitTrace(square)).toBe(square);
});

test('tells a trace from a drawing', () => {
  expect(isTraced(traced(heart.draw({ across: 60 }), 0))).toBe(true);
  expect(isTraced(heart.draw({ across: 60 }))).toBe(false);
});

test('a tolerance must be above 0', () => {
  const drawn = heart.draw({ across: 60 });
  expect(() => fitTrace(drawn, 0)).toThrow('"tolerance" must be a length above 0 mm; got 0 mm');
  expect(() => fitTrace(drawn, Number.NaN)).toThrow('tolerance');
});
