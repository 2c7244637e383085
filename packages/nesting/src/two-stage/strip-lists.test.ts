import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestOfEveryCut } from '../box-solver/every-cut.test.support.js';
import { type BoxCase, boxCase } from '../box-solver/random-box.test.support.js';
import { replayed } from '../box-solver/replayed.test.support.js';
import { keptValue } from '../pattern/kept-value.js';
import type { Part } from '../pattern/part.js';
import { randomOfKind, SMALL } from '../random-kinds.test.support.js';
import { listedPatterns } from './listed-patterns.test.support.js';
import { StripLists, stripLister } from './strip-lists.js';

/** More copies than fit any box here. */
const PLENTY = 1000;

function listsOf({ box, limits, values, rule }: BoxCase): StripLists {
  const demand = values.map(() => PLENTY);
  return new StripLists([box], demand, limits, (l, w) => keptValue(l, w, rule));
}

/** The pieces of each strip of a pattern, with its extent, as one name. */
function stripsOf(part: Part): readonly { readonly extent: number; readonly pieces: string }[] {
  if (part.kind !== 'split') return [];
  return part.parts.map(({ extent, part: strip }) => {
    const lays = strip.kind === 'lay' ? [strip] : strip.parts.map(({ part }) => part);
    const names = lays.map((lay) => (lay.kind === 'lay' ? `${lay.piece}` : '?'));
    return { extent, pieces: names.sort().join(' ') };
  });
}

describe('StripLists', () => {
  it.each([
    ['whatever the kerf and the longest cut', {}, true],
    ['where no strip may be too narrow', { narrowest: true }, false],
    ['where remnants are worth keeping', { keep: true }, true],
    ['with all limits at once', { narrowest: true, keep: true }, false],
  ] as const)('prices what trying every cut finds, %s', (_, range, exact) => {
    const seen = { patterns: 0, priced: 0 };
    fc.assert(
      fc.property(boxCase(range), (drawn) => {
        const { box, limits, values, coin, rule } = drawn;
        const priced = listsOf(drawn).price(values, coin);
        const whole = coin * keptValue(box.length - limits.kerf, box.width - limits.kerf, rule);
        const worth = Math.max(priced.worth[0], whole);
        const best = bestOfEveryCut({ ...drawn, stages: 2 });
        // A kerf and strips that are too narrow together are not told apart from what can be cut.
        if (exact || limits.kerf === 0 || limits.narrowest <= 1) expect(worth).toBe(best);
        else expect(worth).toBeGreaterThanOrEqual(best);
        if (priced.worth[0] > 0) seen.priced++;
        for (const { pattern, worth } of priced.patterns(0)) {
          const { counts, kept } = replayed(pattern.part, drawn, 2);
          expect({ counts, kept }).toEqual({ counts: pattern.counts, kept: pattern.kept });
          expect(
            counts.reduce((sum, [piece, copies]) => sum + values[piece] * copies, coin * kept),
          ).toBe(worth);
          expect(worth).toBeLessThanOrEqual(priced.worth[0]);
          seen.patterns++;
        }
      }),
      { numRuns: 400 },
    );
    expect(seen.priced).toBeGreaterThan(100);
    expect(seen.patterns).toBeGreaterThan(seen.priced / 2);
  });

  it('lists what every pattern is made of that falls short by no more than the gap', () => {
    const features = { narrowestStrip: true, longestCut: true, keep: true };
    const seen = { patterns: 0, left: 0 };
    fc.assert(
      fc.property(
        randomOfKind(features, SMALL),
        fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 4, maxLength: 4 }),
        fc.constantFrom(0, 3, 10, 1000),
        (problem, values, gap) => {
          const { patterns, faces } = listedPatterns(problem, values, gap);
          for (const { pattern, short } of patterns) {
            if (short > gap) {
              seen.left++;
              continue;
            }
            seen.patterns++;
            const { part } = pattern;
            const cuts = part.kind === 'split' ? part.cuts : undefined;
            const face = faces.find(
              (face) => face.box === pattern.stockClass && face.cuts === cuts,
            );
            for (const { extent, pieces } of stripsOf(part)) {
              // The narrowest strip of the same pieces may stand for it.
              const strip = face?.strips.find(
                (listed) => listed.extent <= extent && namesOf(listed.counts) === pieces,
              );
              expect(strip, `${pieces} in ${extent} ticks`).toBeDefined();
            }
          }
        },
      ),
      { numRuns: 300, seed: 3 },
    );
    expect(seen.patterns).toBeGreaterThan(300);
    expect(seen.left).toBeGreaterThan(300);
  });

  it('gives up where there are more than it may list, and where an order takes many sheets', () => {
    const box = {
      length: 200,
      width: 100,
      firstCuts: ['along'] as const,
      lays: [{ piece: 0, turned: false, length: 30, width: 10 }],
    };
    const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
    const keep = (length: number, width: number) => Math.floor((length * width) / 100);
    const lister = stripLister([box], [40], limits, keep);
    const priced = lister?.price([300], 1);
    expect(priced?.within(priced.worth, 1e6, 3)).toBeUndefined();
    const [face] = priced?.within(priced.worth, 1e6, 1e4) ?? [];
    // Up to six pieces in each, by the coins of what is left.
    expect(new Set(face.strips.map(({ counts }) => namesOf(counts))).size).toBe(6);
    // 200 x 100 ticks hold 66 2/3 by their area, so that thirty sheets hold 2000.
    expect(stripLister([box], [2000], limits, keep)).toBeDefined();
    expect(stripLister([box], [2001], limits, keep)).toBeUndefined();
  });
});

function namesOf(counts: readonly (readonly [number, number])[]): string {
  return counts
    .flatMap(([piece, copies]) => Array<string>(copies).fill(`${piece}`))
    .sort()
    .join(' ');
}
