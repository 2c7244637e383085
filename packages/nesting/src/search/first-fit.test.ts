import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { money, totalCost } from '../master/objective.js';
import { legal } from '../pattern/legal.js';
import { patternOf } from '../pattern/pattern-of.js';
import { offcut, piece, sheet } from '../plan-cutting.test.support.js';
import { LARGE, randomOfKind } from '../random-kinds.test.support.js';
import { firstFit } from './first-fit.js';
import { groundOf } from './ground.test.support.js';
import { demandLeft, sheetsUsed } from './planned.js';

const features = {
  stages: 'any',
  kerf: true,
  trim: true,
  narrowestStrip: true,
  longestCut: true,
  limitedStock: true,
  offcuts: true,
  keep: true,
  packs: true,
  rolling: true,
} as const;

describe('firstFit', () => {
  it('cuts all that is wanted from the stock there is, as the shear allows', () => {
    let found = 0;
    fc.assert(
      fc.property(randomOfKind(features, LARGE), (problem) => {
        const { ground, boxes, rules, start } = groundOf(problem);
        if (start === undefined) return;
        found++;
        expect(demandLeft(ground.demand, start).every((quantity) => quantity === 0)).toBe(true);
        const used = sheetsUsed(start, ground.classes.length);
        expect(Number.isFinite(totalCost(ground.classes, used, money))).toBe(true);
        for (const { pattern, count } of start) {
          const box = boxes[pattern.stockClass];
          expect(count).toBeGreaterThan(0);
          expect(legal(pattern.part, box, rules)).toBe(true);
          expect(patternOf(pattern.part, pattern.stockClass, box, rules)).toEqual(pattern);
        }
      }),
      { numRuns: 200 },
    );
    expect(found).toBeGreaterThan(25);
  });

  it('takes what costs nothing, then what gives most metal for its cost', () => {
    const { start } = groundOf({
      pieces: [piece('a', 50, 10, 20)],
      stock: [
        sheet('dear', 100, 20, { price: 100 }),
        sheet('fair', 100, 40, { price: 150 }),
        offcut('A', 50, 25),
      ],
      shear: { firstCut: 'either' },
    });
    // 2 from the offcut, 8 from each of two fair sheets, the last 2 from a dear one.
    expect(start?.map(({ pattern, count }) => [pattern.stockClass, count])).toEqual([
      [2, 1],
      [1, 2],
      [0, 1],
    ]);
  });

  it('fills strips by descending width, each as wide as the widest piece left', () => {
    const { start } = groundOf({
      pieces: [
        piece('wide', 40, 9, 2, { mayTurn: false }),
        piece('middle', 20, 6, 3, { mayTurn: false }),
        piece('thin', 10, 5, 9, { mayTurn: false }),
      ],
      stock: [sheet('s', 100, 20)],
      shear: { firstCut: 'along' },
    });
    // 9: two wide ones, one middle one. 6: two middle ones, six thin ones. 5: the last three.
    expect(start).toHaveLength(1);
    const part = start?.[0].pattern.part;
    if (part?.kind !== 'split') throw new Error('a sheet is divided');
    expect(part.parts.map(({ extent }) => extent)).toEqual([9, 6, 5]);
    const pieces = part.parts.map(({ part: strip }) =>
      strip.kind === 'split'
        ? strip.parts.map(({ part: lay }) => (lay.kind === 'lay' ? lay.piece : -1)).join('')
        : '',
    );
    expect(pieces).toEqual(['001', '11222222', '222']);
  });

  it('finds nothing where the stock runs out', () => {
    const { start } = groundOf({
      pieces: [piece('a', 50, 10, 5)],
      stock: [sheet('s', 100, 20, { canBuy: 1 })],
      shear: { firstCut: 'either' },
    });
    expect(start).toBeUndefined();
  });

  it('gives up pricing patterns again and again once there is no time', () => {
    const still = { mayTurn: false };
    // A strip of 13 leaves 1 of 14, which cannot be held, so that the rule of thumb makes nothing; 11 and 3 would do.
    const { ground, boxes, rules } = groundOf({
      pieces: [
        piece('never', 20, 13, 1, still),
        piece('wide', 20, 11, 8, still),
        piece('thin', 20, 3, 8, still),
      ],
      stock: Array.from({ length: 9 }, (_, i) => offcut(`o${i}`, 30 + i, 14)),
      shear: { firstCut: 'along', narrowestStrip: 3 },
    });
    const pricings = (over: boolean) => {
      let count = 0;
      const pricerFor = (wanted: readonly number[]) => {
        count++;
        return ground.pricerFor(wanted);
      };
      expect(firstFit(ground.classes, boxes, ground.demand, rules, pricerFor, () => over)).toBe(
        undefined,
      );
      return count;
    };
    expect(pricings(true)).toBe(4);
    expect(pricings(false)).toBe(9);
  });

  it('looks at the largest of thousands of offcuts', () => {
    const { ground, start } = groundOf({
      pieces: [piece('a', 30, 20, 90), piece('b', 25, 7, 60)],
      stock: Array.from({ length: 1500 }, (_, i) => offcut(`o${i}`, 40 + ((i * 7) % 1500), 30)),
      shear: { firstCut: 'either' },
    });
    if (start === undefined) throw new Error('there is stock enough');
    expect(demandLeft(ground.demand, start)).toEqual([0, 0]);
    const lengths = start.map(({ pattern }) => ground.classes[pattern.stockClass].box.length);
    // 40 to 1539 long: with each that is used the next is looked at.
    expect(Math.min(...lengths)).toBeGreaterThan(1539 - 400 - start.length);
  });
});
