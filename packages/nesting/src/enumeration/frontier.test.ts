import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Combinations } from './combinations.js';
import { Frontier } from './frontier.js';

const way = { kind: 'whole' } as const;

describe('Frontier', () => {
  it('keeps what nothing else matches in pieces and coins', () => {
    const entry = fc.record({ pieces: fc.nat(), kept: fc.nat({ max: 5 }) });
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 12 }), (drawn) => {
        const combinations = new Combinations([2, 1, 2]);
        const added = drawn.map(({ pieces, kept }) => ({
          pieces: pieces % combinations.size,
          kept,
        }));
        const frontier = new Frontier(combinations);
        for (const { pieces, kept } of added) frontier.add(pieces, kept, way);
        const matches = (a: (typeof added)[number], b: (typeof added)[number]) =>
          combinations
            .counts(a.pieces)
            .every((copies, i) => copies >= combinations.counts(b.pieces)[i]) && a.kept >= b.kept;
        const same = (a: (typeof added)[number], b: (typeof added)[number]) =>
          a.pieces === b.pieces && a.kept === b.kept;
        const wanted = added.filter((one) =>
          added.every((other) => same(one, other) || !matches(other, one)),
        );
        const name = ({ pieces, kept }: (typeof added)[number]) => `${pieces}: ${kept}`;
        expect(frontier.best().map(name).sort()).toEqual([...new Set(wanted.map(name))].sort());
      }),
    );
  });
});
