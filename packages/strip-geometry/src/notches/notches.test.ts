import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyNeutralAxis, anyOutline, orSkip } from '../any-outline.test.support.js';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { doubleHem } from '../edges/double-hem.js';
import { wiredEdge } from '../edges/wired-edge.js';
import { heart } from '../outlines/heart.js';
import { polygon } from '../outlines/polygon.js';
import { regularPolygon } from '../outlines/regular-polygon.js';
import { star } from '../outlines/star.js';
import { groovedSeam } from '../seams/grooved-seam.js';
import { makeStrip } from '../strip.js';
import { notchesOf, notchNotices } from './notches.js';

const bench = { depth: 25, hem: 6, tab: 12, bendRule: zeroThickness() };
const hexagon = makeStrip({ ...bench, outline: regularPolygon.draw({ sides: 6, side: 40 }) });

// Common practice: square to the hem line, then 45 degrees to each side, never past the line.
test('a V of 45 degrees a side at every bend, with its point on the hem line', () => {
  const notches = notchesOf(hexagon);
  expect(notches.map(({ at }) => at)).toEqual(hexagon.bends.map(({ at }) => at));
  for (const { at, from, to, depth, halfAngle } of notches) {
    expect(halfAngle).toBe(45);
    expect(depth).toBe(6);
    expect(at - from).toBeCloseTo(6, 9);
    expect(to - at).toBeCloseTo(6, 9);
  }
});

test('bends toward the side of the hem close it and those away from it open it', () => {
  const outline = star.draw({ points: 5, across: 120 });
  for (const [hemFace, closing] of [
    ['outside', 'out'],
    ['inside', 'in'],
  ] as const) {
    const strip = makeStrip({ ...bench, outline, hemFace });
    notchesOf(strip).forEach(({ hem, least }, index) => {
      const bend = strip.bends[index] ?? expect.fail();
      expect(hem).toBe(bend.direction === closing ? 'closes' : 'opens');
      // Derived: half the bend's angle where the hem closes, nothing where it opens.
      expect(least).toBeCloseTo(hem === 'closes' ? bend.angle / 2 : 0, 9);
    });
  }
});

describe('a notch that is too narrow', () => {
  // The inner corners of a regular pentagram turn through 72 degrees, its tips through 144.
  const outline = star.draw({ points: 5, across: 200, 'inner ratio': 0.3819660113 });

  test('is reported with what it needs', () => {
    const strip = makeStrip({ ...bench, outline });
    expect(notchNotices(strip, notchesOf(strip))).toEqual([]);
    const narrow = notchNotices(strip, notchesOf(strip, { halfAngle: 20 }));
    expect(narrow).toHaveLength(5);
    expect(narrow[0]).toMatchObject({ code: 'notch too narrow', bend: 1, halfAngle: 20 });
    expect(narrow[0]?.message).toContain('bend 1 opens 20 degrees to each side');
    expect(narrow[0]?.message).toContain('needs 36 to');
  });

  // By hand: at a slant of h the hems lie in each other's room by 6 tan 45.05 - 6 tan h = 0.1 mm
  // at h = 44.57 where they stand square; closed, round 0.4 mm, by
  // 0.317 - 0.28 tan h = 0.1 at h = 37.7.
  test.each([
    ['square', 45, 44],
    ['closed', 38, 37],
  ] as const)(
    'is none by less than the eye sees: %s in tinplate at a square corner',
    (hemStage, enough, less) => {
      const bendRule = neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 });
      const outline = regularPolygon.draw({ sides: 4, side: 60 });
      const strip = makeStrip({ ...bench, outline, bendRule, hemFace: 'inside' });
      const toldAt = (halfAngle: number) =>
        notchNotices(strip, notchesOf(strip, { hemStage, halfAngle })).length;
      expect(notchesOf(strip, { hemStage })[0]?.least).toBeGreaterThan(45);
      expect([enough, less].map(toldAt)).toEqual([0, 4]);
    },
  );

  test('at 45 degrees is one at the tips of a star, where the hem is folded inside', () => {
    const strip = makeStrip({ ...bench, outline, hemFace: 'inside' });
    const narrow = notchNotices(strip, notchesOf(strip));
    expect(narrow.map((notice) => notice.code)).toEqual(Array(5).fill('notch too narrow'));
    const least = narrow.map((notice) => notice.code === 'notch too narrow' && notice.least);
    expect(least).toEqual(Array(5).fill(expect.closeTo(72, 6)));
  });

  // 0.3 mm of metal in a sharp bend: 0.3 (tan(A / 2) - tan 45) = 0.1 at A = 106.3.
  test('at 45 degrees is none up to 106 degrees where the hem is closed before it is bent', () => {
    const told = [105, 107].map((angle) => {
      // A groove 40 mm wide whose sides fold through the angle at its bottom.
      const deep = 20 * Math.tan((angle / 2) * (Math.PI / 180));
      const corners = [
        [0, 0],
        [60, 0],
        [60, 60],
        [50, 60],
        [30, 60 - deep],
        [10, 60],
        [0, 60],
      ].map(([x = 0, y = 0]) => ({ x, y }));
      const strip = makeStrip({ ...bench, tab: 5, outline: polygon.draw({ corners }) });
      expect(strip.bends.filter(({ direction }) => direction === 'out')).toMatchObject([
        { angle: expect.closeTo(angle, 6) },
      ]);
      const notices = notchNotices(strip, notchesOf(strip));
      return notices.filter(({ code }) => code === 'notch too narrow').length;
    });
    expect(told).toEqual([0, 1]);
  });

  test('is the one in the cleft of a heart where the hem stands square', () => {
    const strip = makeStrip({ ...bench, outline: heart.draw({ across: 100 }) });
    const [notice] = notchNotices(strip, notchesOf(strip, { hemStage: 'square' }));
    const cleft = strip.bends.find(({ direction }) => direction === 'out') ?? expect.fail();
    expect(cleft.angle).toBeGreaterThan(90);
    expect(notice).toMatchObject({ code: 'notch too narrow', bend: cleft.number });
    expect(notchNotices(strip, notchesOf(strip))).toEqual([]);
  });
});

describe('notches that overlap', () => {
  test('are reported with the bends, also across the seam', () => {
    const outline = regularPolygon.draw({ sides: 4, side: 15 });
    const strip = makeStrip({ ...bench, hem: 8, outline });
    const notices = notchNotices(strip, notchesOf(strip));
    expect(notices.map((notice) => notice.code === 'notches overlap' && notice.bends)).toEqual([
      [1, 2],
      [2, 3],
      [3, 4],
      [4, 1],
    ]);
    // Two halves of 8 mm on a side of 15 mm.
    expect(notices[0]).toMatchObject({ by: expect.closeTo(1, 9) });
    expect(notices[0]?.message).toContain('by 1 mm');
  });

  test('are those that are nearer than their mouths are wide, and no others', () => {
    const half = fc.double({ min: 0, max: 80, noNaN: true });
    fc.assert(
      fc.property(anyOutline, anyNeutralAxis, half, (outline, bendRule, halfAngle) => {
        const strip = orSkip(() => makeStrip({ ...bench, tab: 2, outline, bendRule }));
        const notches = notchesOf(strip, { halfAngle });
        const said = notchNotices(strip, notches).flatMap((notice) =>
          notice.code === 'notches overlap' ? [notice.bends[0]] : [],
        );
        const mouth = 2 * 6 * Math.tan((halfAngle * Math.PI) / 180);
        const isNear = strip.bends.map(({ at }, index) => {
          const next = strip.bends[index + 1]?.at ?? (strip.bends[0]?.at ?? 0) + strip.developed;
          return next - at < mouth - 1e-6;
        });
        expect(said).toEqual(isNear.flatMap((near, index) => (near ? [index + 1] : [])));
      }),
    );
  });
});

test('no notch passes the hem line, whatever the edge, the seam and the angle', () => {
  const half = fc.double({ min: 0, max: 89, noNaN: true });
  const anyEdge = fc.constantFrom(doubleHem(4), wiredEdge(3));
  fc.assert(
    fc.property(anyEdge, half, (edge, halfAngle) => {
      const outline = regularPolygon.draw({ sides: 6, side: 40 });
      const strip = makeStrip({ ...bench, outline, edge, seam: groovedSeam(4) });
      for (const { depth, at } of notchesOf(strip, { halfAngle })) {
        expect(depth).toBe(edge.foldLines.at(-1));
        expect(strip.width - depth).toBe(strip.depth);
        expect(at).toBeGreaterThan(0);
      }
    }),
  );
});

test('a raw edge is not notched', () => {
  const outline = regularPolygon.draw({ sides: 6, side: 40 });
  expect(notchesOf(makeStrip({ ...bench, hem: 0, outline }))).toEqual([]);
});

test.each([-1, 90, 120, Number.NaN])('refuses a half-angle of %f degrees', (halfAngle) => {
  expect(() => notchesOf(hexagon, { halfAngle })).toThrow(
    expect.objectContaining({ name: 'StripError', field: 'halfAngle' }),
  );
});
