import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { legal } from '../pattern/legal.js';
import type { Part } from '../pattern/part.js';
import { piece, sheet } from '../plan-cutting.test.support.js';
import type { CuttingProblem } from '../problem.js';
import { LARGE, randomOfKind } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { StripRule } from './strip-rule.js';

/** Strips as [width, pieces in it]. */
function stripsOf(part: Part | undefined): readonly (readonly [number, string])[] {
  if (part?.kind !== 'split') return [];
  return part.parts.map(({ extent, part: strip }) => {
    const lays = strip.kind === 'split' ? strip.parts.map(({ part: lay }) => lay) : [strip];
    return [extent, lays.map((lay) => (lay.kind === 'lay' ? lay.piece : '?')).join('')] as const;
  });
}

/** What the rule makes of the first stock of an order. */
function filled(problem: CuttingProblem) {
  const { ground, boxes, rules } = groundOf(problem);
  const [{ box }] = ground.classes;
  const part = new StripRule(box, 'along', ground.limits).fill(ground.demand).part;
  return { part, legal: part === undefined || legal(part, boxes[0], rules) };
}

describe('StripRule', () => {
  const still = { mayTurn: false };

  it('leaves out pieces and strips beside which a sliver would be parted', () => {
    const pieces = [
      piece('a', 40, 9, 1, still),
      piece('b', 40, 8, 2, still),
      piece('c', 30, 5, 2, still),
    ];
    const order = { pieces, stock: [sheet('s', 100, 20)] };
    // Without limits all fits, and what is left beyond the strips is 3 wide.
    const free = filled({ ...order, shear: { firstCut: 'along' } });
    expect(stripsOf(free.part)).toEqual([
      [9, '01'],
      [8, '122'],
    ]);
    const careful = filled({ ...order, shear: { firstCut: 'along', narrowestStrip: 4 } });
    // Beside a, b would lose 1, but c loses 4. A strip of b would leave 3 beyond it.
    expect(stripsOf(careful.part)).toEqual([[9, '022']]);
    expect(careful.legal).toBe(true);
  });

  it('leaves out the last piece where a sliver would be left beyond it', () => {
    const order = {
      pieces: [piece('a', 33, 10, 3, still)],
      stock: [sheet('s', 100, 10)],
    };
    expect(stripsOf(filled({ ...order, shear: { firstCut: 'along' } }).part)).toEqual([
      [10, '000'],
    ]);
    const careful = { ...order, shear: { firstCut: 'along', narrowestStrip: 2 } } as const;
    expect(stripsOf(filled(careful).part)).toEqual([[10, '00']]);
  });

  it('finds nothing where pieces are narrower than may be parted', () => {
    const lays = [{ piece: 0, turned: false, length: 33, width: 3 }];
    const box = { length: 100, width: 10, firstCuts: ['along'] as const, lays };
    const parts = [3, 4].map((narrowest) => {
      const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest };
      return new StripRule(box, 'along', limits).fill([3]).part;
    });
    expect(parts.map((part) => part === undefined)).toEqual([false, true]);
  });

  it('makes what can be cut, whatever must not be parted', () => {
    const seen = { slivers: 0, bare: 0 };
    fc.assert(
      fc.property(
        randomOfKind({ kerf: true, trim: true, narrowestStrip: true, offcuts: true }, LARGE),
        (problem) => {
          const { ground, boxes, rules } = groundOf(problem);
          ground.classes.forEach(({ box }, g) => {
            for (const cuts of box.firstCuts) {
              const part = new StripRule(box, cuts, ground.limits).fill(ground.demand).part;
              if (part === undefined) {
                seen.bare++;
                continue;
              }
              expect(legal(part, boxes[g], rules)).toBe(true);
              if (ground.limits.narrowest > 1) seen.slivers++;
            }
          });
        },
      ),
      { numRuns: 500 },
    );
    expect(seen.slivers).toBeGreaterThan(100);
  });

  it('fills a box just so as long as what was in hand is wanted', () => {
    let others = 0;
    fc.assert(
      fc.property(
        randomOfKind({ kerf: true, narrowestStrip: true, offcuts: true }, LARGE),
        fc.array(fc.nat(), { minLength: 40, maxLength: 40 }),
        (problem, draws) => {
          const { ground } = groundOf(problem);
          for (const { box } of ground.classes) {
            for (const cuts of box.firstCuts) {
              const rule = new StripRule(box, cuts, ground.limits);
              const { part, inHand } = rule.fill(ground.demand);
              const less = ground.demand.map((count, piece) => {
                const needed = inHand.get(piece) ?? 0;
                return needed + (draws[piece % draws.length] % (count - needed + 1));
              });
              if (less.some((count, piece) => count < ground.demand[piece])) others++;
              expect(rule.fill(less).part).toEqual(part);
            }
          }
        },
      ),
      { numRuns: 300 },
    );
    expect(others).toBeGreaterThan(300);
  });
});
