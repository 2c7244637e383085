import fc from 'fast-check';
import { METAL_NAMES } from '../../order/thickness.js';
import type { NewStock } from '../rack.js';
import { readRackText } from '../rack-text.js';

/** Texts that are hard on tables and spreadsheets. */
export const oddTexts = fc
  .oneof(
    fc.constantFrom(
      ...['', 'left rack', '=1+1', '+1', '-3', '@SUM(A1)', "'", "''=x", '\uFF1D1', '3-4', '1/2'],
      ...['Mar 3', '007', '1E5', 'a;b', 'a,b', 'a\tb', '"', '"a"', 'a"b', ';', ',', 'true', '#N/A'],
      ...['الرف الأيسر', 'שולחן 3', '🍪 shelf', 'e\u0301\u0301', 'Ærø', '棚', 'x'.repeat(120)],
    ),
    fc.string({ unit: 'grapheme', maxLength: 30 }),
    fc.string({ maxLength: 30 }),
  )
  // As the command takes them in: one line, trimmed.
  .map((text) => readRackText(text))
  .filter((reading) => reading.ok)
  .map((reading) => (reading.ok ? reading.value : ''));

const millionths = (most: number) =>
  fc.integer({ min: 10_000, max: most }).map((whole) => whole / 1_000_000);

const sides = fc
  .tuple(millionths(2_000_000_000), millionths(2_000_000_000))
  .map(([one, other]) => ({ length: Math.max(one, other), width: Math.min(one, other) }));

/** Things to put on a rack. */
export const stocks: fc.Arbitrary<NewStock> = fc
  .record({
    kind: fc.constantFrom('offcut', 'offcut', 'sheets'),
    size: sides,
    metal: fc.constantFrom(...METAL_NAMES),
    thickness: fc.option(millionths(5_000_000), { nil: undefined }),
    rolled: fc.constantFrom('along', 'across', undefined),
    place: oddTexts,
    origin: oddTexts,
    name: oddTexts,
    bookValue: fc.option(fc.nat({ max: 100_000_000 }), { nil: undefined }),
    count: fc.integer({ min: 1, max: 500 }),
  })
  .map(({ kind, size, metal, thickness, rolled, place, origin, name, bookValue, count }) => ({
    kind: kind === 'sheets' ? 'sheets' : 'offcut',
    ...size,
    metal,
    ...(thickness === undefined ? {} : { thickness }),
    ...(rolled === undefined ? {} : { rolled }),
    place,
    origin,
    name: kind === 'sheets' ? name || 'Sheet' : '',
    ...(bookValue === undefined ? {} : { bookValue }),
    count: kind === 'sheets' ? count : 1,
  }));
