import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toRadians } from './angle.js';
import { anyCurve, anyEllipse, anySmoothOutline, sampled } from './any-curve.test.support.js';
import { anyNeutralAxis, between, orSkip } from './any-outline.test.support.js';
import { neutralAxis } from './bend-rules/neutral-axis.js';
import { zeroThickness } from './bend-rules/zero-thickness.js';
import { type CurveRun, develop, type Run } from './develop.js';
import { perimeter } from './measure.js';
import { circle } from './outlines/circle.js';
import { closedPolygon } from './outlines/closed-polygon.js';
import { regularPolygon } from './outlines/regular-polygon.js';
import { distance, point, polar } from './point.js';
import {
  arc,
  cubic,
  ellipticalArc,
  headingAt,
  lengthOf,
  line,
  pointAt,
  quadratic,
  tightestRadius,
  totalTurn,
} from './segment.js';
import { makeStrip } from './strip.js';
import { turned } from './transform.js';

const SIDES = ['outside', 'inside', 'both'] as const;

const curvesOf = (runs: readonly Run[]) =>
  runs.filter((run): run is CurveRun => run.kind === 'curve');

/** Degrees turned through in all, positive inward. */
const turningOf = (runs: readonly Run[]) =>
  runs.reduce((sum, run) => {
    return run.kind === 'flat' ? sum : sum + (run.direction === 'in' ? run.angle : -run.angle);
  }, 0);

// Theorem of the offset curve (Steiner): a closed curve that turns once round is longer by
// 2 pi d at a distance d outside.
describe('smooth closed curves', () => {
  const gentle = neutralAxis({ thickness: 0.3, insideRadius: 0.5, factor: 0.5 });
  const anySmooth = fc.oneof(anyEllipse, anySmoothOutline);

  test('are pi t longer where the size is the inside than where it is the middle', () => {
    fc.assert(
      fc.property(anySmooth, ({ segments }) => {
        const [outside, inside, both] = SIDES.map((metal) =>
          orSkip(() => develop(segments, { bendRule: gentle, closed: true, metal })),
        );
        const middle = both?.length ?? Number.NaN;
        expect(outside && outside.length - middle).toBeCloseTo(Math.PI * 0.3, 6);
        expect(inside && inside.length - middle).toBeCloseTo(-Math.PI * 0.3, 6);
        // The neutral line at half the thickness is the drawn line itself.
        expect(middle).toBeCloseTo(perimeter({ name: 'smooth', segments }), 6);
      }),
    );
  });

  test('turn through 360 degrees, each run one way', () => {
    fc.assert(
      fc.property(anySmooth, anyNeutralAxis, ({ segments }, bendRule) => {
        const { runs } = orSkip(() => develop(segments, { bendRule, closed: true, metal: 'both' }));
        expect(turningOf(runs)).toBeCloseTo(360, 3);
        for (const { shape, direction } of curvesOf(runs)) {
          const steps = 50;
          const reach = shape.end - shape.start;
          const headings = Array.from({ length: steps + 1 }, (_, step) =>
            headingAt(shape.segment, shape.start + (reach * step) / steps),
          );
          headings.slice(1).forEach((heading, index) => {
            const last = headings[index] ?? heading;
            const sine = last.x * heading.y - last.y * heading.x;
            expect(direction === 'in' ? sine : -sine).toBeGreaterThan(-1e-6);
          });
        }
      }),
    );
  });
});

// The length of the offset curve itself, by chords between points moved off the drawn line.
test('a curve takes the length of its offset curve', () => {
  fc.assert(
    fc.property(anyCurve, fc.constantFrom(...SIDES), (segment, metal) => {
      fc.pre(tightestRadius(segment) > 3 && lengthOf(segment) > 1);
      const thickness = 0.4;
      const bendRule = neutralAxis({ thickness, insideRadius: 0.5, factor: 0.5 });
      const path = [segment];
      const { length } = develop(path, { bendRule, closed: false, metal });
      // The middle of the metal lies to the right of the travel, to the left, or on the line.
      const right = { outside: thickness / 2, inside: -thickness / 2, both: 0 }[metal];
      const steps = 4000;
      const total = lengthOf(segment);
      const offset = Array.from({ length: steps + 1 }, (_, step) => {
        const along = (total * step) / steps;
        const [{ x, y }, heading] = [pointAt(segment, along), headingAt(segment, along)];
        return point(x + right * heading.y, y - right * heading.x);
      });
      const chords = offset.reduce((sum, p, index) => sum + distance(p, offset[index - 1] ?? p), 0);
      expect(Math.abs(length / chords - 1)).toBeLessThan(2e-6);
    }),
    { numRuns: 60 },
  );
});

describe('what a curve becomes', () => {
  const bendRule = neutralAxis({ thickness: 0.3, insideRadius: 0.5, factor: 0.4 });
  const options = { bendRule, closed: false, metal: 'outside' } as const;

  test('an S is divided where it changes sides', () => {
    const ess = cubic(point(0, 0), point(30, 0), point(0, 30), point(30, 30));
    const { runs } = develop([ess], options);
    expect(runs.map((run) => run.kind === 'curve' && run.direction)).toEqual(['in', 'out']);
    const [first, second] = curvesOf(runs);
    const half = lengthOf(ess) / 2;
    expect(first?.shape).toEqual({ segment: ess, start: 0, end: expect.closeTo(half, 9) });
    expect(second?.shape).toEqual({
      segment: ess,
      start: expect.closeTo(half, 9),
      end: expect.closeTo(2 * half, 9),
    });
    expect(first?.angle).toBeCloseTo(second?.angle ?? Number.NaN, 9);
    expect(first?.even).toBe(false);
  });

  test('a straight Bezier curve is a flat', () => {
    const straight = cubic(point(0, 0), point(3, 4), point(4.5, 6), point(9, 12));
    expect(develop([straight], options).runs).toEqual([
      { kind: 'flat', from: 0, to: expect.closeTo(15, 12) },
    ]);
  });

  // The neutral line of a parabola at its tightest radius: 8 mm is more than five thicknesses, so
  // it lies in the middle; 1 mm is less, so it lies at the factor. y = x^2 / (2 r) is r at the vertex.
  test.each([
    [8, 0.15],
    [1, 0.12],
  ])('the neutral line of a curve with a tightest radius of %d mm lies %d mm deep', (r, depth) => {
    const parabola = quadratic(point(-2 * r, 2 * r), point(0, -2 * r), point(2 * r, 2 * r));
    const { length } = develop([parabola], options);
    const added = depth * totalTurn(parabola);
    expect(length).toBeCloseTo(lengthOf(parabola) + added, 9);
    expect(curvesOf(develop([parabola], options).runs)[0]?.radius).toBeCloseTo(r, 9);
  });

  test('refuses a curve tighter than the metal, and says where', () => {
    const tight = ellipticalArc({
      ...{ centre: point(0, 0), radiusX: 20, radiusY: 2, rotation: 0 },
      ...{ start: -1, sweep: 2 },
    });
    // At the end of its long axis its radius is 4 / 20.
    const refused = () => develop([tight], { ...options, metal: 'inside' });
    expect(refused).toThrow(expect.objectContaining({ name: 'BendError', code: 'too tight' }));
    expect(refused).toThrow('at (20, 0), has a radius of 0.2 mm on the outer face of metal 0.3 mm');
    expect(() => develop([tight], options)).not.toThrow();
    expect(() => develop([tight], { ...options, metal: 'both' })).not.toThrow();
  });

  test('refuses a cusp even where the metal has no thickness', () => {
    const cusp = cubic(point(1, -1), point(-1 / 3, 1), point(-1 / 3, -1), point(1, 1));
    expect(() => develop([cusp], { ...options, bendRule: zeroThickness() })).toThrow(
      'comes to a point at (0, 0)',
    );
  });

  test('a corner on the middle line loses (R + T / 2) tan(A / 2) either side', () => {
    const path = [line(point(0, 0), point(20, 0)), line(point(20, 0), point(20, 20))];
    const { runs } = develop(path, { ...options, metal: 'both' });
    expect(runs[0]?.to).toBeCloseTo(20 - 0.65, 12);
    expect(runs[1] && runs[1].to - runs[1].from).toBeCloseTo((Math.PI / 2) * 0.62, 12);
  });
});

describe('smooth joints', () => {
  const bendRule = neutralAxis({ thickness: 0.3, insideRadius: 0.5, factor: 0.4 });

  // Inscribed polygons fall short by 1 - sin(x) / x with x = pi / n: 36 sides 0.1269 %, and so on
  // (elementary). The metal's share, 2 pi d, is whole.
  test.each([
    [36, 0.001269],
    [72, 0.000317],
    [360, 0.0000127],
  ])('a circle drawn with %i sides is formed, not bent', (sides, deficit) => {
    const { segments } = regularPolygon.draw({ sides, 'across corners': 80 });
    const options = { bendRule, closed: true, metal: 'outside', cornerAngle: 12 } as const;
    const { length, runs } = develop(segments, options);
    expect(runs.map(({ kind }) => kind)).toEqual(segments.map(() => 'curve'));
    expect(turningOf(runs)).toBeCloseTo(360, 8);
    const round = develop(circle.draw({ across: 80 }).segments, options).length;
    expect((round - length) / (80 * Math.PI)).toBeCloseTo(deficit, 6);
    for (const { radius, even, direction } of curvesOf(runs)) {
      expect(radius / 40).toBeCloseTo(1, 2);
      expect([even, direction]).toEqual([true, 'in']);
    }
  });

  test('a curve takes over the turn, the straight line beside it stays flat', () => {
    const end = arc(point(20, 0), polar(point(20, 0), 10, Math.PI / 2 + toRadians(2)), 1);
    const path = [line(point(0, 0), point(20, 0)), end];
    const options = { bendRule, closed: false, metal: 'outside' } as const;
    const bent = develop(path, options).runs;
    expect(bent.map(({ kind }) => kind)).toEqual(['flat', 'bend', 'curve']);
    const [flat, curve] = develop(path, { ...options, cornerAngle: 3 }).runs;
    expect(flat).toEqual({ kind: 'flat', from: 0, to: 20 });
    expect(curve).toMatchObject({ kind: 'curve', even: false, direction: 'in', radius: 10 });
    expect(curve?.kind === 'curve' && curve.angle).toBeCloseTo(2 + 180 / Math.PI, 9);
    expect(curve && curve.to - curve.from).toBeCloseTo(10 + 0.15 * (1 + toRadians(2)), 9);
  });

  test('whatever counts as smooth, an outline turns through 360 degrees', () => {
    // Chords of smooth curves, as a tracing draws them, turned so that no joint is level.
    fc.assert(
      fc.property(anySmoothOutline, between(0, 30), between(0, 3), (outline, angle, by) => {
        const corners = outline.segments.flatMap((segment) => sampled(segment, 12).slice(1));
        const { segments } = turned({ name: 'traced', segments: closedPolygon(corners) }, by);
        const options = { bendRule: zeroThickness(), closed: true, cornerAngle: angle } as const;
        const { runs, length } = develop(segments, { ...options, metal: 'outside' });
        expect(turningOf(runs)).toBeCloseTo(360, 3);
        expect(length).toBeCloseTo(perimeter({ name: 'traced', segments }), 8);
      }),
    );
  });
});

describe('a strip', () => {
  const work = {
    depth: 25,
    hem: 6,
    tab: 5,
    bendRule: neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 }),
  };
  const outline = circle.draw({ across: 70 });

  // Elementary: pi times the diameter of the middle of the metal.
  test.each([
    ['inside', 70.28],
    ['middle', 70],
    ['outside', 69.72],
  ] as const)('sized by its %s', (sizeIs, diameter) => {
    const strip = makeStrip({ ...work, outline, sizeIs });
    expect(strip.developed).toBeCloseTo(Math.PI * diameter, 9);
    expect(strip.sizeIs).toBe(sizeIs);
    expect(makeStrip({ ...work, outline }).sizeIs).toBe('inside');
  });

  test('tells its runs, once round', () => {
    const drawn = regularPolygon.draw({ sides: 6, 'across flats': 75 });
    const { runs, bends, developed } = makeStrip({ ...work, outline: drawn });
    expect(runs[0]?.from).toBe(0);
    expect(runs[runs.length - 1]?.to).toBe(developed);
    expect(runs.filter(({ kind }) => kind === 'bend').map(({ to }) => to)).toEqual(
      bends.map(({ to }) => to),
    );
  });

  test('a traced round is formed where the corner angle says so', () => {
    const traced = regularPolygon.draw({ sides: 36, 'across corners': 80 });
    expect(makeStrip({ ...work, outline: traced }).bends).toHaveLength(36);
    expect(makeStrip({ ...work, outline: traced, cornerAngle: 12 }).bends).toEqual([]);
  });

  test.each([-1, 90, Number.NaN])('refuses a corner angle of %d', (cornerAngle) => {
    expect(() => makeStrip({ ...work, outline, cornerAngle })).toThrow(
      expect.objectContaining({ name: 'StripError', field: 'cornerAngle' }),
    );
  });
});
