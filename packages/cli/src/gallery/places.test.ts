import {
  families,
  lengthOf,
  makeStrip,
  type Point,
  placeSeam,
  zeroThickness,
} from '@stripwright/strip-geometry';
import { describe, expect, test } from 'vitest';
import { curveLabel, placesOn, pointsOn } from './places.js';

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

describe.each(families.map((family) => [family.name, family] as const))('%s', (_, family) => {
  const outline = family.draw(family.example);
  // Metal of no thickness lies on the drawn line, so marks are distances along the outline.
  const strip = makeStrip({ outline, depth: 25, hem: 6, tab: 12, bendRule: zeroThickness() });
  const places = placesOn(outline, strip);

  test('each bend is at the corner that lies as far along the outline as its mark', () => {
    const { segments } = placeSeam(outline, strip.seam);
    let along = 0;
    const joints = segments.map((segment) => {
      along += lengthOf(segment);
      return { along, at: segment.to };
    });
    expect(places.bends).toHaveLength(strip.bends.length);
    places.bends.forEach(({ at, label }, index) => {
      const bend = strip.bends[index];
      const joint = joints.find((one) => Math.abs(one.along - (bend?.at ?? -1)) < 1e-6);
      expect(label).toBe(`${bend?.number}`);
      expect(joint && apart(joint.at, at)).toBeLessThan(1e-9);
    });
    expect(apart(places.seam.at, joints.at(-1)?.at ?? { x: NaN, y: NaN })).toBeLessThan(1e-9);
  });

  test('every place lies on the outline, and away points off the cookie', () => {
    const points = outline.segments.flatMap(pointsOn);
    for (const { at, away } of [...places.bends, ...places.curves, places.seam]) {
      expect(Math.hypot(away.x, away.y)).toBeCloseTo(1, 9);
      const step = 0.2;
      expect(holdsPoint(points, { x: at.x + step * away.x, y: at.y + step * away.y })).toBe(false);
      expect(holdsPoint(points, { x: at.x - step * away.x, y: at.y - step * away.y })).toBe(true);
    }
  });
});

/** By counting the sides that a ray to the right crosses: odd inside (even-odd rule). */
function holdsPoint(points: readonly Point[], { x, y }: Point): boolean {
  return points.reduce((inside, from, index) => {
    const to = points[(index + 1) % points.length] ?? from;
    const crosses = from.y > y !== to.y > y;
    const at = from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x);
    return crosses && at > x ? !inside : inside;
  }, false);
}

test('letters go on after z', () => {
  expect([0, 25, 26, 51, 52].map(curveLabel)).toEqual(['a', 'z', 'a2', 'z2', 'a3']);
});
