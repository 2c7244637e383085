import {
  families,
  makeStrip,
  placeSeam,
  type Strip,
  StripError,
  splitStrip,
  zeroThickness,
} from '@stripwright/strip-geometry';
import { describe, expect, it } from 'vitest';
import { outlinePlaces } from './outline-places.js';

const making = { depth: 25, hem: 6, tab: 12, bendRule: zeroThickness() };

const apart = (one: { at: Point }, other: { at: Point }) =>
  Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y);

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Nothing where the outline has no place for a second seam. */
function partsOf(strip: Strip): readonly Strip[] | undefined {
  try {
    return splitStrip(strip, strip.length * 0.8).map((part) => part.strip);
  } catch (error) {
    if (error instanceof StripError) return undefined;
    throw error;
  }
}

/** Bends with nothing but a flat between them are as far apart on the outline as on the strip. */
function expectFlatsToAgree(strip: Strip, bends: readonly { readonly at: Point }[]): number {
  let flats = 0;
  strip.bends.slice(1).forEach((bend, index) => {
    const before = strip.bends[index];
    const [one, other] = [bends[index], bends[index + 1]];
    if (before === undefined || one === undefined || other === undefined)
      throw new Error('no bend');
    if (strip.curves.some(({ from, to }) => from < bend.at && to > before.at)) return;
    // Straight as it is where the metal has no thickness; smooth joints between flats have no turn.
    expect(apart(one, other)).toBeCloseTo(bend.at - before.at, 6);
    flats++;
  });
  return flats;
}

describe('places on an outline', () => {
  it('of bends are as far apart as the flats between them, for every family', () => {
    let flats = 0;
    for (const family of families) {
      const outline = family.draw(family.example);
      const strip = makeStrip({ ...making, outline });
      const { segments } = placeSeam(outline, strip.seam);
      const { bends, curves, from, to } = outlinePlaces(segments, [strip], 0);
      expect(bends).toHaveLength(strip.bends.length);
      expect(curves).toHaveLength(strip.curves.length);
      expect(from).toBe(0);
      // Without thickness a strip is as long as its outline.
      expect(to).toBeCloseTo(strip.developed, 4);
      flats += expectFlatsToAgree(strip, bends);
    }
    expect(flats).toBeGreaterThan(60);
  });

  it('of a divided strip go on where the part before ended', () => {
    let divided = 0;
    for (const family of families) {
      const outline = family.draw(family.example);
      const strip = makeStrip({ ...making, outline });
      const { segments } = placeSeam(outline, strip.seam);
      const parts = partsOf(strip);
      if (parts === undefined) continue;
      expect(parts.length).toBeGreaterThan(1);
      divided++;
      const places = parts.map((_, index) => outlinePlaces(segments, parts, index));
      places.forEach(({ from, to, bends }, index) => {
        const part = parts[index];
        if (part === undefined) throw new Error('no part');
        expect(from).toBeCloseTo(places[index - 1]?.to ?? 0, 9);
        expect(to - from).toBeCloseTo(part.developed, 3);
        expectFlatsToAgree(part, bends);
      });
    }
    expect(divided).toBeGreaterThan(10);
  });
});
