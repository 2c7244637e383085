import { expect, test } from 'vitest';
import { zeroThickness } from '../bend-rules/zero-thickness.js';
import { heart } from '../outlines/heart.js';
import { star } from '../outlines/star.js';
import { refold } from '../refold/refold.js';
import { makeStrip } from '../strip.js';
import { coarseMarks } from './coarse-marks.js';

const plain = { depth: 25, hem: 0, tab: 0, bendRule: zeroThickness() };

test('nothing is said of an outline that comes nearer than its marks', () => {
  const strip = makeStrip({ ...plain, outline: heart.draw({ across: 80 }) });
  expect(coarseMarks(refold(strip, 1), 1)).toEqual([]);
  expect(coarseMarks({ largestDeviation: 0.49, closureGap: 0.49, at: 3 }, 0.5)).toEqual([]);
});

test('long thin spikes lean, and it says how far and where', () => {
  const sizes = { points: 24, across: 150, 'tip angle': 3 };
  const folded = refold(makeStrip({ ...plain, outline: star.draw(sizes) }), 1);
  const [warning, ...others] = coarseMarks(folded, 1);
  expect(others).toEqual([]);
  expect(warning).toMatchObject({
    code: 'coarse marks',
    measured: folded.largestDeviation,
    limit: 1,
    place: { from: folded.at },
  });
  expect(warning?.measured).toBeGreaterThan(1);
  expect(warning?.message).toMatch(
    /^Folded at marks of 1 mm, the outline strays [\d.]+ mm from the drawing at [\d.]+ mm from the square end,/,
  );
});

test('ends that miss each other are said by themselves', () => {
  const [warning, ...others] = coarseMarks({ largestDeviation: 0.4, closureGap: 0.5, at: 10 }, 0.5);
  expect(others).toEqual([]);
  expect(warning?.message).toMatch(
    /^Folded at marks of 0.5 mm, the ends miss each other by 0.5 mm/,
  );
});
