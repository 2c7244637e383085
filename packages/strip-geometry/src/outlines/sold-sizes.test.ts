import { describe, expect, test } from 'vitest';
import { neutralAxis } from '../bend-rules/neutral-axis.js';
import { bounds } from '../measure.js';
import type { Outline } from '../outline.js';
import { tightestRadius } from '../segment.js';
import { makeStrip } from '../strip.js';
import { scaled } from '../transform.js';
import { checkWorkability } from '../workability/workability.js';
import { families } from './families.js';
import { letter } from './letter.js';

/** Millimetres over the longer way: the smallest and largest cutters that shops sell, and between. */
const SIZES = [30, 50, 75, 100, 150, 200];

// Common practice for hand-made cutters: thin tinplate, bent nearly sharp over a folding bar.
const TINPLATE = neutralAxis({ thickness: 0.28, insideRadius: 0.4, factor: 0.44 });

const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

const examples: readonly (readonly [string, Outline])[] = [
  ...families.map((family) => [family.name, family.draw(family.example)] as const),
  ...LETTERS.map((name) => [`letter ${name}`, letter.draw({ letter: name, high: 75 })] as const),
];

/** The outline in the same shape, its longer way `size` millimetres. */
function inSize(outline: Outline, size: number): Outline {
  const { across, high } = bounds(outline);
  return scaled(outline, size / Math.max(across, high));
}

describe.each(examples)('%s', (_, outline) => {
  test.each(SIZES)('can be bent from tinplate %i mm over the longer way', (size) => {
    const strip = makeStrip({
      outline: inSize(outline, size),
      depth: 25,
      hem: 6,
      tab: size / 10,
      bendRule: TINPLATE,
    });
    expect(strip.length).toBeGreaterThan(2 * size);
    const turned = [...strip.bends, ...strip.curves].reduce(
      (sum, { direction, angle }) => sum + (direction === 'in' ? angle : -angle),
      0,
    );
    // Once round, by the theorem of turning tangents (Hopf).
    expect(turned).toBeCloseTo(360, 6);
  });

  test('at 75 mm holds no dough, and every flat and fold can be worked with a 6 mm hem', () => {
    const small = inSize(outline, 75);
    const strip = makeStrip({ outline: small, depth: 25, hem: 6, tab: 7.5, bendRule: TINPLATE });
    const found = checkWorkability(small, strip).map(({ code }) => code);
    expect(found).not.toContain('narrow gap');
    expect(found).not.toContain('pointed corner');
    expect(found).not.toContain('short flat');
    expect(found).not.toContain('hem in a sharp fold');
  });

  test('no curve is tighter than 3 mm at 75 mm', () => {
    for (const segment of inSize(outline, 75).segments) {
      expect(tightestRadius(segment)).toBeGreaterThan(3);
    }
  });
});
