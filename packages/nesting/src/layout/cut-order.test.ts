import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PatternCut } from '../pattern/cut-up.js';
import { cuttingRules } from '../pattern/cutting-rules.js';
import type { Part } from '../pattern/part.js';
import { inOrder } from '../pattern/pattern-key.js';
import type { CuttingProblem } from '../problem.js';
import { cutsInOrder, gaugeSettings } from './cut-order.js';

const lengths = [9, 7, 7, 5, 4, 3];
const problem: CuttingProblem = {
  pieces: lengths.map((length, index) => ({
    id: `${index}`,
    length,
    width: 4,
    quantity: 9,
    mayTurn: false,
  })),
  stock: [{ kind: 'sheet', id: 's', length: 60, width: 40, price: 1, onHand: 0, canBuy: 'any' }],
  shear: { firstCut: 'along' },
};
const rules = cuttingRules(problem);
const box = { length: 60, width: 40 };
const piece = fc.nat({ max: lengths.length - 1 });
/** Strips of the same width, of pieces that fit into the sheet. */
const strips = fc.array(fc.array(piece, { minLength: 1, maxLength: 6 }), {
  minLength: 1,
  maxLength: 9,
});

function sheetOf(contents: readonly (readonly number[])[]): Part {
  return inOrder({
    kind: 'split',
    cuts: 'along',
    parts: contents.map((strip) => ({
      extent: 4,
      part: {
        kind: 'split',
        cuts: 'across',
        parts: strip.map((index) => ({
          extent: lengths[index] ?? 0,
          part: { kind: 'lay', piece: index, turned: false },
        })),
      },
    })),
  });
}

const placeOf = ({ from: { x, y } }: PatternCut) => `${x},${y}`;

describe('the order of cuts', () => {
  it('is had for hundreds of thousands of cuts', () => {
    const pins = 200_000;
    const long = { length: 3 * pins + 1, width: 4 };
    const slice = { extent: 3, part: { kind: 'lay', piece: 5, turned: false } } as const;
    const parts = Array.from({ length: pins }, () => slice);
    const cuts = cutsInOrder({ kind: 'split', cuts: 'across', parts }, long, rules);
    expect(cuts).toHaveLength(pins);
    expect(gaugeSettings(cuts)).toBe(1);
  });

  it('sets the gauge once for each length that strips are cut to', () => {
    fc.assert(
      fc.property(strips, (contents) => {
        const cuts = cutsInOrder(sheetOf(contents), box, rules);
        const second = cuts.filter(({ stage }) => stage === 2);
        // No order can have fewer: each length has to be set once.
        const wanted = new Set(second.map(({ near }) => near)).size;
        expect(gaugeSettings(second)).toBe(wanted);
      }),
    );
  });

  it('cuts each thing only once it is parted off, whatever came before', () => {
    fc.assert(
      fc.property(strips, (contents) => {
        const loose = new Set(['0,0']);
        for (const cut of cutsInOrder(sheetOf(contents), box, rules)) {
          expect(loose).toContain(placeOf(cut));
          const { x, y } = cut.from;
          loose.add(cut.runs === 'along' ? `${x},${y + cut.near}` : `${x + cut.near},${y}`);
        }
      }),
    );
  });
});
