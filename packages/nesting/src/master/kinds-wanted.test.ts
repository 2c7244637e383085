import { expect, it } from 'vitest';
import { kindsWanted } from './kinds-wanted.js';

it('counts the kinds of which any are wanted', () => {
  expect(kindsWanted([6, 3, 0])).toBe(2);
  expect(kindsWanted([0, 0])).toBe(0);
});
