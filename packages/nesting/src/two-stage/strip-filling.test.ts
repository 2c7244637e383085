import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mayRest } from '../pattern/limits.js';
import { StripFilling } from './strip-filling.js';

interface Strip {
  readonly length: number;
  readonly lays: readonly {
    readonly along: number;
    readonly most: number;
    readonly worth: number;
  }[];
  readonly narrowest: number;
  readonly kerf: number;
  readonly perTick: number;
  readonly trouble: number;
}
/** Lays are no narrower than what may be parted, so that none is needed as a filler. */
const strip: fc.Arbitrary<Strip> = fc
  .record({ narrowest: fc.integer({ min: 1, max: 3 }), kerf: fc.integer({ min: 0, max: 1 }) })
  .chain(({ narrowest, kerf }) =>
    fc.record({
      length: fc.integer({ min: 1, max: 24 }),
      lays: fc.array(
        fc.record({
          along: fc.integer({ min: narrowest + kerf, max: 14 }),
          most: fc.integer({ min: 0, max: 4 }),
          worth: fc.integer({ min: 0, max: 30 }),
        }),
        { minLength: 1, maxLength: 6 },
      ),
      narrowest: fc.constant(narrowest),
      kerf: fc.constant(kerf),
      // An end is worth so much a tick, less what it takes to keep it.
      perTick: fc.integer({ min: 0, max: 6 }),
      trouble: fc.integer({ min: 0, max: 20 }),
    }),
  );

/** What the best strip that holds anything of worth is worth with its end, by trying every number of copies. */
function bestByTrying(
  lays: Strip['lays'],
  room: number,
  endOf: (rest: number) => number,
  before = 0,
): number {
  const [first, ...rest] = lays;
  if (first === undefined) return before > 0 ? before + endOf(room) : 0;
  let best = 0;
  for (let n = 0; n <= first.most && n * first.along <= room; n++) {
    const worth = before + n * first.worth;
    best = Math.max(best, bestByTrying(rest, room - n * first.along, endOf, worth));
  }
  return best;
}

/** A filling of lays as drawn, and what an end is worth; -Infinity for one that may not be. */
function setUp({ length, lays, narrowest, kerf, perTick, trouble }: Strip) {
  const limits = { kerf, narrowest, longestCut: Number.POSITIVE_INFINITY };
  const filling = new StripFilling(
    lays.map(({ along }, piece) => ({ piece, crosswise: false, along, across: 1 })),
    lays.map(({ most }) => most),
    length,
    limits,
  );
  const worthOf = (rest: number) => Math.max(0, perTick * rest - trouble);
  const endOf = (rest: number) =>
    mayRest(rest, limits) ? worthOf(rest) : Number.NEGATIVE_INFINITY;
  const own = { worths: lays.map(({ worth }) => worth), endPerTick: worthOf(length) / length };
  return { filling, own, endOf };
}

describe('StripFilling', () => {
  it('holds the best filling with its end, and tells the copies in it', () => {
    let several = 0;
    let ends = 0;
    fc.assert(
      fc.property(strip, (drawn) => {
        const { length, lays } = drawn;
        const { filling, own, endOf } = setUp(drawn);
        const filled = [...filling.fill(own)];
        const withEnds = filled.map((worth, at) => (worth > 0 ? worth + endOf(length - at) : 0));
        const best = Math.max(0, ...withEnds);
        expect(best).toBe(bestByTrying(lays, length, endOf));
        if (best === 0) return;
        const at = withEnds.indexOf(best);
        const counts = new Map<number, number>();
        filling.count(own, at, counts);
        let size = 0;
        let worth = 0;
        for (const [index, copies] of counts) {
          expect(copies).toBeLessThanOrEqual(lays[index].most);
          size += copies * lays[index].along;
          worth += copies * lays[index].worth;
        }
        expect(size).toBe(at);
        expect(worth).toBe(filled[at]);
        if (counts.size > 1) several++;
        if (endOf(length - at) > 0) ends++;
      }),
      { numRuns: 3000 },
    );
    expect(several).toBeGreaterThan(300);
    expect(ends).toBeGreaterThan(200);
  });

  it('forgets the worths of the strip before', () => {
    fc.assert(
      fc.property(strip, (drawn) => {
        const { filling, own } = setUp(drawn);
        const first = [...filling.fill(own)];
        filling.fill({ worths: own.worths.map((worth) => 31 - worth), endPerTick: 0 });
        expect([...filling.fill(own)]).toEqual(first);
      }),
    );
  });
});
