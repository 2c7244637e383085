import fc from 'fast-check';

const pieces = fc.oneof(
  fc.constantFrom('', '\n', ' ', 'a', '1', '.5'),
  fc.constantFrom(
    ...['"', ',', ';', '\t', '\r', '\n', '\r\n', "'", '=', '\0', '\uFEFF', '\ud800', '\u202e'],
    ...['mark', 'sheets', 'offcut', 'CCY', 'CDV', '-1', '0', '1e9', '1/0', '1,200', '9'.repeat(40)],
    ...['__proto__', 'constructor', '9 x 9', '9 in', 'gold', 'brass', 'x'.repeat(200), ' '],
  ),
  fc.string({ maxLength: 8 }),
);

/** A table with stretches cut out, and others put in. */
export const mutatedTables = (table: string): fc.Arbitrary<string> =>
  fc
    .array(
      fc.record({
        at: fc.nat({ max: table.length }),
        cut: fc.oneof(
          { weight: 4, arbitrary: fc.nat({ max: 2 }) },
          { weight: 2, arbitrary: fc.nat({ max: 12 }) },
          { weight: 1, arbitrary: fc.nat({ max: table.length }) },
        ),
        put: pieces,
      }),
      { minLength: 1, maxLength: 3 },
    )
    .map((edits) =>
      edits.reduce(
        (text, { at, cut, put }) => text.slice(0, at) + put + text.slice(at + cut),
        table,
      ),
    );
