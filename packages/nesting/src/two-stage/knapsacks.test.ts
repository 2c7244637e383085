import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoxCase, boxCase } from '../box-solver/random-box.test.support.js';
import { keptValue } from '../pattern/kept-value.js';
import { mayRest, netRest } from '../pattern/limits.js';
import { SheetKnapsack } from './sheet-knapsack.js';
import { type StripFamily, type StripWidth, stripFaces } from './strip-family.js';
import { StripKnapsack } from './strip-knapsack.js';

/** Every choice of copies, none above its limit, that takes up no more than there is room for. */
function choices(
  room: number,
  items: readonly { readonly size: number; readonly most: number }[],
): readonly (readonly number[])[] {
  const [first, ...rest] = items;
  if (first === undefined) return [[]];
  const found: (readonly number[])[] = [];
  for (let n = 0; n <= first.most && n * first.size <= room; n++) {
    for (const tail of choices(room - n * first.size, rest)) found.push([n, ...tail]);
  }
  return found;
}

function valuedBy({ rule }: BoxCase): ((length: number, width: number) => number) | undefined {
  return rule === undefined ? undefined : (length, width) => keptValue(length, width, rule);
}

/** What a choice of lays in a strip is worth, or nothing where it may not be cut so. */
function stripWorth(
  drawn: BoxCase,
  family: StripFamily,
  width: StripWidth,
  lays: readonly number[],
  copies: readonly number[],
): number {
  const { limits, values, coin } = drawn;
  const keep = valuedBy(drawn) ?? (() => 0);
  const chosen = lays.map((lay, i) => ({ ...family.lays[lay], copies: copies[i] }));
  const filled = chosen.reduce((sum, { along, copies }) => sum + along * copies, 0);
  const all = copies.reduce((sum, n) => sum + n, 0);
  if (all === 0 || !mayRest(family.length - filled, limits) || (width.uncut && all > 1)) return 0;
  const pieces = chosen.reduce((sum, { piece, copies }) => sum + values[piece] * copies, 0);
  if (pieces === 0) return 0;
  const trims = chosen.reduce(
    (sum, { along, across, copies }) =>
      sum + copies * keep(along - limits.kerf, netRest(width.extent - across, limits)),
    0,
  );
  const end = keep(netRest(family.length - filled, limits), width.extent - limits.kerf);
  return pieces + coin * (trims + end);
}

const drawnBox = fc
  .tuple(boxCase({ most: 14, narrowest: true, keep: true }), fc.boolean())
  .map(([drawn, keep]) => (keep ? drawn : { ...drawn, rule: undefined }));
const copies = fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 10, maxLength: 10 });

describe('StripKnapsack', () => {
  it('finds the best strip of every width, solved again at other values too', () => {
    let positive = 0;
    fc.assert(
      fc.property(drawnBox, copies, (drawn, wanted) => {
        const keep = valuedBy(drawn);
        const { families } = stripFaces(
          [drawn.box],
          drawn.limits,
          keep !== undefined ? 'every' : 'needed',
        );
        for (const family of families) {
          const most = family.lays.map((_, i) => wanted[i]);
          const knapsack = new StripKnapsack(family, most, drawn.limits, keep);
          // What an earlier solve left must not matter.
          knapsack.solve(
            family.lays.map((_, i) => 7 * i + 1),
            1,
          );
          knapsack.solve(
            family.lays.map(({ piece }) => drawn.values[piece]),
            drawn.coin,
          );
          family.widths.forEach((width, w) => {
            const lays = [...family.lays.keys()].slice(0, width.leading).concat(width.fitting);
            const items = lays.map((lay) => ({ size: family.lays[lay].along, most: most[lay] }));
            const worths = choices(family.length, items).map((choice) =>
              stripWorth(drawn, family, width, lays, choice),
            );
            expect(knapsack.worth(w)).toBe(Math.max(0, ...worths));
            const counts = new Map(knapsack.counts(w));
            if (knapsack.worth(w) === 0) return;
            positive++;
            const own = lays.map((lay) => counts.get(lay) ?? 0);
            expect([...counts.keys()].every((lay) => lays.includes(lay))).toBe(true);
            own.forEach((n, i) => {
              expect(n).toBeLessThanOrEqual(items[i].most);
            });
            expect(stripWorth(drawn, family, width, lays, own)).toBe(knapsack.worth(w));
          });
        }
      }),
      { numRuns: 200 },
    );
    expect(positive).toBeGreaterThan(200);
  });
});

describe('StripKnapsack that minds trims in some widths only', () => {
  it('finds the best of those, and of the others strips worth what it says or more', () => {
    const seen = { same: 0, less: 0 };
    fc.assert(
      fc.property(drawnBox, copies, (drawn, wanted) => {
        const keep = valuedBy(drawn);
        const { families } = stripFaces([drawn.box], drawn.limits, 'every');
        for (const family of families) {
          const most = family.lays.map((_, i) => wanted[i]);
          const [all, some] = [1, 3].map((every) => {
            const knapsack = new StripKnapsack(family, most, drawn.limits, keep, every);
            knapsack.solve(
              family.lays.map(({ piece }) => drawn.values[piece]),
              drawn.coin,
            );
            return knapsack;
          });
          family.widths.forEach((width, w) => {
            const worth = some.worth(w);
            if (w % 3 === 0) expect(worth).toBe(all.worth(w));
            expect(worth).toBeLessThanOrEqual(all.worth(w));
            if (worth === all.worth(w)) seen.same++;
            else seen.less++;
            if (worth === 0) return;
            const lays = [...family.lays.keys()].slice(0, width.leading).concat(width.fitting);
            const counts = new Map(some.counts(w));
            const own = lays.map((lay) => counts.get(lay) ?? 0);
            expect(stripWorth(drawn, family, width, lays, own)).toBeGreaterThanOrEqual(worth);
          });
        }
      }),
      { numRuns: 600 },
    );
    expect(seen.same).toBeGreaterThan(200);
    expect(seen.less).toBeGreaterThan(20);
  });
});

describe('SheetKnapsack', () => {
  it('finds the best strips side by side, with what is left beside them', () => {
    const seen = { plain: 0, widened: 0 };
    fc.assert(
      fc.property(drawnBox, copies, fc.nat(), (drawn, wanted, salt) => {
        const { limits, coin } = drawn;
        const keep = valuedBy(drawn);
        const { families, faces } = stripFaces(
          [drawn.box],
          limits,
          keep !== undefined ? 'every' : 'needed',
        );
        for (const { family, breadth } of faces) {
          const { length, widths } = families[family];
          const worth = (w: number) => 1 + ((salt + 37 * w) % 23) * widths[w].extent;
          const most = widths.map((_, w) => wanted[w % 10]);
          const knapsack = new SheetKnapsack(breadth, length, widths, most, limits, keep);
          const found = knapsack.solve(worth, coin);
          const usable = ({ extent }: StripWidth) =>
            extent - limits.kerf >= limits.narrowest || extent === breadth;
          const items = widths.map((width, w) => ({
            size: width.extent,
            most: usable(width) ? most[w] : 0,
          }));
          const rests = choices(breadth, items).map((choice) => {
            const filled = choice.reduce((sum, n, w) => sum + n * widths[w].extent, 0);
            if (filled === 0 || !mayRest(breadth - filled, limits)) return 0;
            const kept = keep?.(length - limits.kerf, netRest(breadth - filled, limits)) ?? 0;
            return choice.reduce((sum, n, w) => sum + n * worth(w), coin * kept);
          });
          const best = Math.max(0, ...rests);
          expect(found).toBeGreaterThanOrEqual(best);
          const filling = knapsack.filling();
          if (filling === undefined) {
            expect(found).toBe(0);
            return;
          }
          const filled = filling.widths.reduce((sum, [w, n]) => sum + n * widths[w].extent, 0);
          expect(mayRest(breadth - filled - filling.by, limits)).toBe(true);
          const kept = keep?.(length - limits.kerf, netRest(breadth - filled, limits)) ?? 0;
          const value = filling.widths.reduce((sum, [w, n]) => sum + n * worth(w), coin * kept);
          expect(value).toBe(found);
          if (filling.by === 0) {
            seen.plain++;
            expect(found).toBe(best);
          } else {
            seen.widened++;
            expect(widths[filling.widened].stretches).toBe(true);
            expect(filled + filling.by).toBe(breadth);
          }
        }
      }),
      { numRuns: 200 },
    );
    expect(seen.plain).toBeGreaterThan(100);
    expect(seen.widened).toBeGreaterThan(5);
  });
});
