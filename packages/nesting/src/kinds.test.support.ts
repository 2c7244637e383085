import fc from 'fast-check';
import type { CuttingProblem } from './problem.js';
import { type Features, randomOfKind, type Size } from './random-kinds.test.support.js';

const EVERYTHING: Features = {
  stages: 'any',
  kerf: true,
  trim: true,
  longestCut: true,
  narrowestStrip: true,
  limitedStock: true,
  offcuts: true,
  packs: true,
  bookValues: true,
  keep: true,
  metals: true,
  rolling: true,
  spares: true,
};

/** Each feature in about every third problem. */
const SOME: fc.Arbitrary<Features> = fc
  .record(Object.fromEntries(Object.keys(EVERYTHING).map((name) => [name, fc.nat({ max: 2 })])))
  .map((drawn) =>
    Object.fromEntries(Object.entries(EVERYTHING).filter(([name]) => drawn[name] === 0)),
  );

/**
 * Kinds of cutting problems: each has what its name says, and what gives that
 * something to act on.
 */
const KINDS: Readonly<Record<string, fc.Arbitrary<Features>>> = {
  'two stages': fc.constant({}),
  'three stages': fc.constant({ stages: 'three' }),
  'free guillotine': fc.constant({ stages: 'free' }),
  'limited stock': fc.constant({ limitedStock: true, offcuts: true }),
  'longest cut': fc.constant({ longestCut: true }),
  'longest cut, any stages': fc.constant({ longestCut: true, stages: 'any' }),
  'narrowest strip': fc.constant({ narrowestStrip: true }),
  'narrowest strip, any stages': fc.constant({ narrowestStrip: true, stages: 'any' }),
  kerf: fc.constant({ kerf: true, stages: 'any' }),
  'kerf and narrowest strip': fc.constant({ kerf: true, narrowestStrip: true, stages: 'any' }),
  'trim of the edges': fc.constant({ trim: true, offcuts: true, longestCut: true, stages: 'any' }),
  'trim and kerf': fc.constant({ trim: true, kerf: true, stages: 'any' }),
  packs: fc.constant({ packs: true, limitedStock: true }),
  'book values': fc.constant({ bookValues: true, limitedStock: true, offcuts: true }),
  'offcuts worth keeping': fc.constant({ keep: true, offcuts: true }),
  'offcuts worth keeping, any stages': fc.constant({
    keep: true,
    limitedStock: true,
    offcuts: true,
    stages: 'any',
  }),
  'kept sheets of packs': fc.constant({ keep: true, packs: true, bookValues: true }),
  metals: fc.constant({ metals: true, limitedStock: true, offcuts: true }),
  'rolling direction': fc.constant({ rolling: true, offcuts: true, stages: 'any' }),
  spares: fc.constant({ spares: true, keep: true, stages: 'any' }),
  'some of everything': SOME,
  'everything at once': fc.constant(EVERYTHING),
};

/** Problems of one kind. */
export interface Kind {
  readonly name: string;
  problems(size: Size): fc.Arbitrary<CuttingProblem>;
}

export const EVERY_KIND: readonly Kind[] = Object.entries(KINDS).map(([name, features]) => ({
  name,
  problems: (size) => features.chain((drawn) => randomOfKind(drawn, size)),
}));
