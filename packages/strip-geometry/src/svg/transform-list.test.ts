import { expect, test } from 'vitest';
import { mapPoint } from './matrix.js';
import { readTransform } from './transform-list.js';

const place = { element: 'g', id: undefined, line: 1, column: 1 };
const image = (text: string, x: number, y: number) =>
  mapPoint(readTransform(text, place), { x, y });

// The matrices are those of SVG 1.1, 7.6.
test.each<[string, number, number]>([
  ['', 3, 4],
  ['none', 3, 4],
  ['translate(10)', 13, 4],
  ['translate(10,20)', 13, 24],
  ['scale(2)', 6, 8],
  ['scale(2 -1)', 6, -4],
  ['rotate(90)', -4, 3],
  ['rotate(90 3 0)', -1, 0],
  ['rotate(180,3,4)', 3, 4],
  ['skewX(45)', 7, 4],
  ['skewY(45)', 3, 7],
  ['matrix(1 2 3 4 5 6)', 20, 28],
  ['translate(10) scale(2)', 16, 8],
  ['scale(2), translate(10)', 26, 8],
  [' scale( 1e0 ,2 )translate(1-1) ', 4, 6],
  ['translate(10px, 20px) rotate(90deg)', 6, 23],
])('%s takes (3, 4) to (%d, %d)', (text, x, y) => {
  const mapped = image(text, 3, 4);
  expect(mapped.x).toBeCloseTo(x, 10);
  expect(mapped.y).toBeCloseTo(y, 10);
});

test.each([
  'turn(9)',
  'scale()',
  'scale(1 2 3)',
  'matrix(1)',
  'rotate(1 2)',
  'scale(x)',
  'scale(1',
  '9',
])('%s is refused', (text) => {
  expect(() => readTransform(text, place)).toThrow('Line 1, column 1, g: There is');
});

test('numbers that grow without bound are refused', () => {
  expect(() => readTransform('scale(1e200) scale(1e200)', place)).toThrow('beyond all bounds');
});
