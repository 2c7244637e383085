import { expect, test } from 'vitest';
import { inUnits } from './in-units.js';

test('figures are told in the units of the shop', () => {
  expect(inUnits('3.175 mm, 25.4 mm and 68.96734 degrees at 1.5', 'in')).toBe(
    '0.125 in, 1 in and 69 degrees at 1.5',
  );
  expect(inUnits('0.5601 mm and 4 mm', 'mm')).toBe('0.56 mm and 4 mm');
  expect(inUnits('a factor of 0.4471', 'in')).toBe('a factor of 0.4471');
  expect(inUnits('0.28123 mm', 'mm')).toBe('0.28 mm');
});
