import { expect, test } from 'vitest';
import { readSeamPlace } from './seam-place.js';

test.each([
  ['3', { corner: 3 }],
  [' 12 ', { corner: 12 }],
  ['2 in', { distance: 50.8 }],
  ['1/2', { distance: 12.7 }],
  ['2.5', { distance: 63.5 }],
  ['30mm', { distance: 30 }],
  ['middle', 'middle of the longest flat'],
])('%j', (text, place) => {
  expect(readSeamPlace(text, 'in')).toEqual({ ok: true, value: place });
});

test.each([
  ['the back', 'not a seam place'],
  ['', 'not a seam place'],
  ['-1', 'must not be negative'],
  ['2 ft', 'unknown unit'],
])('%j is no place', (text, code) => {
  expect(readSeamPlace(text, 'in')).toMatchObject({ ok: false, complaint: { code } });
});
