import fc from 'fast-check';
import {
  type CutBox,
  type CuttingRules,
  cutBox,
  cuttingRules,
  type FillBox,
} from './pattern/cutting-rules.js';
import { legal } from './pattern/legal.js';
import type { Part, Slice } from './pattern/part.js';
import type { PatternCount } from './pattern/pattern-count.js';
import { patternOf } from './pattern/pattern-of.js';
import type { CuttingProblem, Piece, Rolling, Stages, Stock } from './problem.js';
import { seededRandom } from './random.js';

/** A problem with one stock, and a way of cutting it that fits but may break a limit. */
export interface RandomPattern {
  readonly problem: CuttingProblem;
  readonly stock: Stock;
  readonly rules: CuttingRules;
  readonly box: CutBox;
  readonly part: Part;
}

const shearRecord = fc.record({
  firstCut: fc.constantFrom('along' as const, 'across' as const, 'either' as const),
  longestCut: fc.option(fc.integer({ min: 20, max: 60 }), { nil: undefined }),
  narrowestStrip: fc.integer({ min: 0, max: 4 }),
  kerf: fc.integer({ min: 0, max: 2 }),
  trim: fc.integer({ min: 0, max: 3 }),
  stages: fc.constantFrom<Stages>(2, 3, 'free'),
});

/** Problems with one kind of stock and shears of every kind. */
export function randomShop(stages?: Stages): fc.Arbitrary<{
  readonly problem: CuttingProblem;
  readonly stock: Stock;
}> {
  const side = fc.integer({ min: 3, max: 20 });
  const piece = fc.record({
    length: side,
    width: side,
    quantity: fc.integer({ min: 1, max: 9 }),
    mayTurn: fc.boolean(),
    spares: fc.integer({ min: 0, max: 6 }),
  });
  return fc
    .record({
      pieces: fc.array(piece, { minLength: 1, maxLength: 5 }),
      kind: fc.constantFrom('sheet' as const, 'offcut' as const),
      length: fc.integer({ min: 25, max: 60 }),
      width: fc.integer({ min: 25, max: 60 }),
      shear: shearRecord,
      keep: fc.option(
        fc.record({
          leastLength: fc.integer({ min: 1, max: 20 }),
          leastWidth: fc.integer({ min: 1, max: 8 }),
          coinsPerMillion: fc.integer({ min: 0, max: 400_000 }),
          trouble: fc.integer({ min: 0, max: 20 }),
        }),
        { nil: undefined },
      ),
    })
    .map(({ pieces, kind, length, width, shear, keep }) => {
      const size = { id: 'stock', length, width };
      const stock: Stock =
        kind === 'offcut'
          ? { kind, ...size }
          : { kind, ...size, price: 4000, onHand: 0, canBuy: 'any' };
      const { longestCut, trim, ...limits } = shear;
      const problem: CuttingProblem = {
        pieces: pieces.map((entry, i): Piece => ({ id: `piece ${i + 1}`, ...entry })),
        stock: [stock],
        shear: {
          ...limits,
          stages: stages ?? limits.stages,
          trim: trim < limits.kerf ? 0 : trim,
          ...(longestCut === undefined ? {} : { longestCut }),
        },
        ...(keep === undefined ? {} : { keep: [keep] }),
      };
      return { problem, stock };
    });
}

/** Random trees of parts, of the depth that the stages of the problem allow. */
export function randomPattern(stages?: Stages): fc.Arbitrary<RandomPattern> {
  return fc.tuple(randomShop(stages), fc.nat()).map(([{ problem, stock }, seed]) => {
    const rules = cuttingRules(problem);
    const box = cutBox(stock, problem);
    return { problem, stock, rules, box, part: randomPart(problem, box, seededRandom(seed)) };
  });
}

/** A random tree of parts for a box; the same for the same numbers drawn. */
export function randomPart(
  problem: CuttingProblem,
  box: { readonly length: number; readonly width: number },
  random: () => number,
): Part {
  const { kerf = 0, stages = 2, firstCut } = problem.shear;
  const whole = (below: number) => Math.floor(random() * below);
  const lays = problem.pieces.flatMap((piece, index) => [
    { piece: index, turned: false, length: piece.length + kerf, width: piece.width + kerf },
    ...(piece.mayTurn
      ? [{ piece: index, turned: true, length: piece.width + kerf, width: piece.length + kerf }]
      : []),
  ]);
  const free = stages === 'free';

  function split(length: number, width: number, cuts: Rolling, left: number): Part {
    const parts: Slice[] = [];
    let rest = cuts === 'along' ? width : length;
    for (let tries = 0; tries < 6; tries++) {
      const fitting = lays.filter((lay) =>
        cuts === 'along'
          ? lay.width <= rest && lay.length <= length
          : lay.length <= rest && lay.width <= width,
      );
      if (fitting.length === 0 || random() < 0.08) break;
      const lay = fitting[whole(fitting.length)];
      const own = cuts === 'along' ? lay.width : lay.length;
      // Now and then wider than the piece, as wide as all there is, or empty.
      const looser = free || left > 1;
      const extent =
        random() < 0.15 ? rest : looser && random() < 0.2 ? Math.min(rest, own + whole(6)) : own;
      const copies = random() < 0.3 ? Math.min(2, Math.floor(rest / extent)) : 1;
      const l = cuts === 'along' ? length : extent;
      const w = cuts === 'along' ? extent : width;
      const square = cuts === 'along' ? 'across' : 'along';
      const deeper = free && random() < 0.1 ? cuts : square;
      const part: Part =
        random() < 0.05
          ? { kind: 'split', cuts: square, parts: [] }
          : left > 1 && random() < 0.8
            ? split(l, w, deeper, left - 1)
            : { kind: 'lay', piece: lay.piece, turned: lay.turned };
      for (let i = 0; i < copies; i++) parts.push({ extent, part });
      rest -= extent * copies;
    }
    return { kind: 'split', cuts, parts };
  }

  const ways = firstCut === 'either' ? (['along', 'across'] as const) : [firstCut];
  const depth = free ? 1 + whole(4) : stages;
  return split(box.length, box.width, ways[whole(ways.length)], depth);
}

/** A problem with one stock, and some legal ways of cutting it. */
export interface RandomSheets extends Omit<RandomPattern, 'part'> {
  readonly sheets: readonly PatternCount[];
}

/** Sheets cut in legal ways that each hold a piece. */
export function randomSheets(stages?: Stages): fc.Arbitrary<RandomSheets> {
  return fc
    .tuple(
      randomShop(stages),
      fc.nat(),
      fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 5 }),
    )
    .map(([{ problem, stock }, seed, counts]) => {
      const rules = cuttingRules(problem);
      const box = cutBox(stock, problem);
      const random = seededRandom(seed);
      const sheets = counts.flatMap((count) => {
        for (let tries = 0; tries < 30; tries++) {
          const part = randomPart(problem, box, random);
          if (!legal(part, box, rules)) continue;
          const pattern = patternOf(part, 0, box, rules);
          if (pattern.counts.length > 0) return [{ pattern, count }];
        }
        return [];
      });
      return { problem, stock, rules, box, sheets };
    });
}

/** Copies of each piece that sheets give together. */
export function produced(sheets: readonly PatternCount[], pieces: number): readonly number[] {
  const copies = new Array<number>(pieces).fill(0);
  for (const { pattern, count } of sheets) {
    for (const [piece, each] of pattern.counts) copies[piece] += each * count;
  }
  return copies;
}

/** A box on which pieces may lie straight, and turned where they may turn. */
export function fillBox(box: CutBox, { pieces, limits: { kerf } }: CuttingRules): FillBox {
  const lays = pieces.flatMap(({ length, width, mayTurn }, piece) =>
    (mayTurn ? [false, true] : [false]).map((turned) => ({
      piece,
      turned,
      length: (turned ? width : length) + kerf,
      width: (turned ? length : width) + kerf,
    })),
  );
  return { ...box, lays };
}
