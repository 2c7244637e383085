import { expect, test } from 'vitest';
import { outlineNames } from './outline-names.js';

const named = (name: string, ...outlines: string[]) =>
  outlineNames({ name, outlines: outlines.map((own) => ({ name: own, segments: [] })) });

test.each([
  [['Duck', 'path 1'], ['Duck']],
  [
    ['Ring', 'ring outer', 'ring inner'],
    ['Ring, outer', 'Ring, inner'],
  ],
  [
    ['Set', 'duck', 'pond'],
    ['Set, duck', 'Set, pond'],
  ],
  // A bare number would not say of what.
  [
    ['Set', 'path 1', 'path 2'],
    ['Set, path 1', 'Set, path 2'],
  ],
  [
    ['Set', 'a', 'a b'],
    ['Set, a', 'Set, a b'],
  ],
])('%j', ([name = '', ...outlines], expected) => {
  expect(named(name, ...outlines)).toEqual(expected);
});
