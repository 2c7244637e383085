import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CuttingNode, CuttingTreeError, cuttingTree } from './cutting-tree.js';
import type { Layout } from './plan.js';
import type { CuttingProblem } from './problem.js';
import { drawnPlan } from './verify/drawn-plan.test.support.js';
import { verifyPlan } from './verify/verify-plan.js';

/** By hand: a sheet of 13 x 9, trimmed by 1 with a kerf of 1, three pieces and a rest. */
const problem: CuttingProblem = {
  pieces: [
    { id: 'long', length: 11, width: 2, quantity: 1, mayTurn: false },
    { id: 'short', length: 4, width: 4, quantity: 2, mayTurn: false },
  ],
  stock: [{ kind: 'sheet', id: 's', length: 13, width: 9, price: 1, onHand: 0, canBuy: 'any' }],
  shear: { firstCut: 'along', kerf: 1, trim: 1 },
};
const layout: Layout = {
  stock: 's',
  count: 1,
  pieces: [
    { piece: 'short', x: 1, y: 1, length: 4, width: 4, turned: false },
    { piece: 'short', x: 6, y: 1, length: 4, width: 4, turned: false },
    { piece: 'long', x: 1, y: 6, length: 11, width: 2, turned: false },
  ],
  cuts: [
    { stage: 0, x1: 0, y1: 0, x2: 0, y2: 9 },
    { stage: 0, x1: 12, y1: 0, x2: 12, y2: 9 },
    { stage: 0, x1: 1, y1: 0, x2: 12, y2: 0 },
    { stage: 0, x1: 1, y1: 8, x2: 12, y2: 8 },
    { stage: 1, x1: 1, y1: 5, x2: 12, y2: 5 },
    { stage: 2, x1: 5, y1: 1, x2: 5, y2: 5 },
    { stage: 2, x1: 10, y1: 1, x2: 10, y2: 5 },
  ],
  remnants: [{ x: 11, y: 1, length: 1, width: 4, keep: false, value: 0 }],
};

/** Every node, a divided rectangle before its parts and the near part before the far one. */
function walk(node: CuttingNode): readonly CuttingNode[] {
  if (node.kind !== 'cut') return [node];
  return [node, ...[node.near, node.far].flatMap((part) => (part === undefined ? [] : walk(part)))];
}

describe('the cutting tree of a layout', () => {
  it('is as the cuts divide the metal, without trimmed edges and dust', () => {
    expect(cuttingTree(problem, layout)).toEqual({
      kind: 'cut',
      index: 0,
      of: { x: 0, y: 0, length: 13, width: 9 },
      far: {
        kind: 'cut',
        index: 1,
        of: { x: 1, y: 0, length: 12, width: 9 },
        near: {
          kind: 'cut',
          index: 2,
          of: { x: 1, y: 0, length: 11, width: 9 },
          far: {
            kind: 'cut',
            index: 3,
            of: { x: 1, y: 1, length: 11, width: 8 },
            near: {
              kind: 'cut',
              index: 4,
              of: { x: 1, y: 1, length: 11, width: 7 },
              near: {
                kind: 'cut',
                index: 5,
                of: { x: 1, y: 1, length: 11, width: 4 },
                near: { kind: 'piece', index: 0 },
                far: {
                  kind: 'cut',
                  index: 6,
                  of: { x: 6, y: 1, length: 6, width: 4 },
                  near: { kind: 'piece', index: 1 },
                  far: { kind: 'remnant', index: 0 },
                },
              },
              far: { kind: 'piece', index: 2 },
            },
          },
        },
      },
    });
  });

  it('has no part where the kerf takes all of it, and is one leaf where nothing is cut', () => {
    const bare: CuttingProblem = {
      pieces: [{ id: 'a', length: 4, width: 3, quantity: 1, mayTurn: false }],
      stock: [{ kind: 'offcut', id: 'A', length: 5, width: 3 }],
      shear: { firstCut: 'along', kerf: 2 },
    };
    const pieces = [{ piece: 'a', x: 0, y: 0, length: 4, width: 3, turned: false }];
    const cut: Layout = {
      stock: 'A',
      count: 1,
      pieces,
      cuts: [{ stage: 2, x1: 4, y1: 0, x2: 4, y2: 3 }],
      remnants: [],
    };
    expect(cuttingTree(bare, cut)).toEqual({
      kind: 'cut',
      index: 0,
      of: { x: 0, y: 0, length: 5, width: 3 },
      near: { kind: 'piece', index: 0 },
    });
    const whole = { ...bare, stock: [{ kind: 'offcut' as const, id: 'A', length: 4, width: 3 }] };
    expect(cuttingTree(whole, { ...cut, cuts: [] })).toEqual({ kind: 'piece', index: 0 });
  });

  it('has exactly the pieces and the remnants for leaves, and every cut once', () => {
    fc.assert(
      fc.property(drawnPlan, ({ problem, plan }) => {
        for (const layout of plan.layouts) {
          const nodes = walk(cuttingTree(problem, layout));
          const indices = (kind: CuttingNode['kind']) =>
            nodes.flatMap((node) => (node.kind === kind ? [node.index] : [])).sort((a, b) => a - b);
          expect(indices('piece')).toEqual([...layout.pieces.keys()]);
          expect(indices('remnant')).toEqual([...layout.remnants.keys()]);
          expect(indices('cut')).toEqual([...layout.cuts.keys()]);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('is a cutting order: walked from the root, the plan holds as well', () => {
    fc.assert(
      fc.property(drawnPlan, ({ problem, plan }) => {
        const layouts = plan.layouts.map((layout) => {
          // Turned about first, as far as that can be done: the order is the tree's, not the list's.
          const shuffled = [...layout.cuts].sort((a, b) => a.stage - b.stage);
          const tree = cuttingTree(problem, { ...layout, cuts: shuffled });
          const cuts = walk(tree).flatMap((node) =>
            node.kind === 'cut' ? [shuffled[node.index]] : [],
          );
          return { ...layout, cuts };
        });
        expect(verifyPlan(problem, { ...plan, layouts })).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('is derived from thousands of cuts', () => {
    const count = 4000;
    const strips: CuttingProblem = {
      pieces: [{ id: 'a', length: 9, width: 1, quantity: count, mayTurn: false }],
      stock: [{ kind: 'offcut', id: 'A', length: 9, width: count }],
      shear: { firstCut: 'along' },
    };
    const all: Layout = {
      stock: 'A',
      count: 1,
      pieces: Array.from({ length: count }, (_, y) => ({
        piece: 'a',
        x: 0,
        y,
        length: 9,
        width: 1,
        turned: false,
      })),
      cuts: Array.from({ length: count - 1 }, (_, i) => ({
        stage: 1,
        x1: 0,
        y1: i + 1,
        x2: 9,
        y2: i + 1,
      })),
      remnants: [],
    };
    let node: CuttingNode | undefined = cuttingTree(strips, all);
    let depth = 0;
    while (node?.kind === 'cut') {
      node = node.far;
      depth++;
    }
    expect(depth).toBe(count - 1);
  });

  it.each<[string, Partial<Layout>, string]>([
    ['stock that is not there', { stock: 'x' }, "'x' is no stock"],
    [
      'a cut that stops short',
      { cuts: layout.cuts.with(4, { ...layout.cuts[4], x2: 9 }) },
      'cut 5 (1, 5) to (9, 5) does not divide 11 x 7 at (1, 1)',
    ],
    [
      'a cut in an edge that was trimmed off',
      { cuts: [...layout.cuts, { stage: 2, x1: 12, y1: 0, x2: 12, y2: 9 }] },
      'cut 8 (12, 0) to (12, 9) lies in metal that is gone',
    ],
    ['a cut left out', { cuts: layout.cuts.slice(0, -1) }, '6 x 4 at (6, 1) is left'],
    [
      'a remnant of nothing',
      { remnants: [...layout.remnants, { ...layout.remnants[0], x: 0 }] },
      '1 x 4 at (0, 1) is listed',
    ],
    [
      'a piece in the place of another',
      { pieces: [...layout.pieces, layout.pieces[0]] },
      'in one place',
    ],
  ])('is not made of %s', (_, change, message) => {
    const make = () => cuttingTree(problem, { ...layout, ...change });
    expect(make).toThrow(CuttingTreeError);
    expect(make).toThrow(message);
  });
});
