import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoxCase, boxCase } from '../box-solver/random-box.test.support.js';
import type { BoxLay } from '../pattern/box.js';
import type { Band, PatternList } from '../pattern/pattern-pricer.js';
import { countsOf } from '../pattern/walk-part.js';
import type { Rolling } from '../problem.js';
import { TwoStagePricer } from './two-stage-pricer.js';

interface Strip {
  readonly extent: number;
  /** Copies of each piece. */
  readonly counts: readonly number[];
}

/** Sheets divided into strips at random, none with more of a piece than is wanted. */
function randomStrips(
  { box, limits, values }: BoxCase,
  cuts: Rolling,
  demand: readonly number[],
  random: () => number,
): readonly Strip[] {
  const along = (lay: BoxLay) => (cuts === 'along' ? lay.length : lay.width);
  const across = (lay: BoxLay) => (cuts === 'along' ? lay.width : lay.length);
  const [length, breadth] = cuts === 'along' ? [box.length, box.width] : [box.width, box.length];
  const left = [...demand];
  const strips: Strip[] = [];
  for (let room = breadth; ; ) {
    const fit = box.lays.filter((lay) => across(lay) <= room && along(lay) <= length);
    const lay = fit[Math.floor(random() * fit.length)];
    if (lay === undefined || left[lay.piece] === 0) return strips;
    const extent = across(lay);
    const counts = values.map(() => 0);
    let rest = length;
    const put = (one: BoxLay): void => {
      counts[one.piece]++;
      left[one.piece]--;
      rest -= along(one);
    };
    put(lay);
    // What the shear cannot cut to length is one piece from end to end.
    const uncut = extent - limits.kerf > limits.longestCut;
    if (uncut && along(lay) !== length) return strips;
    for (let tries = 0; tries < 12 && !uncut; tries++) {
      const other = box.lays[Math.floor(random() * box.lays.length)];
      const trims = across(other) === extent || along(other) - limits.kerf <= limits.longestCut;
      if (across(other) <= extent && along(other) <= rest && left[other.piece] > 0 && trims) {
        put(other);
      }
    }
    strips.push({ extent, counts });
    room -= extent;
  }
}

/** The narrowest band of a list that holds all that a strip holds. */
function bandFor(strip: Strip, bands: readonly Band[]): Band | undefined {
  return bands
    .filter((band) => {
      const held = new Map(countsOf(band.part));
      return (
        band.extent <= strip.extent &&
        strip.counts.every((copies, piece) => copies <= (held.get(piece) ?? 0))
      );
    })
    .sort((a, b) => a.extent - b.extent)[0];
}

/** Whether the bands lie side by side in some division of a list. */
function divided(bands: readonly (Band | undefined)[], { sheets }: PatternList): boolean {
  return sheets.some(({ extents }) => {
    const slots = new Map(extents);
    return bands.every((band) => {
      const left = slots.get(band?.extent ?? 0) ?? 0;
      slots.set(band?.extent ?? 0, left - 1);
      return left > 0;
    });
  });
}

/** Every way to fill a strip to which no further piece can be added, by trying all numbers of each. */
function everyFilling(
  lays: readonly { readonly piece: number; readonly along: number }[],
  room: number,
  wanted: readonly number[],
): readonly (readonly number[])[] {
  const [lay, ...others] = lays;
  if (lay === undefined) return [wanted.map(() => 0)];
  const fillings: number[][] = [];
  for (let copies = 0; copies <= wanted[lay.piece] && copies * lay.along <= room; copies++) {
    for (const rest of everyFilling(others, room - copies * lay.along, wanted)) {
      fillings.push(rest.map((count, piece) => count + (piece === lay.piece ? copies : 0)));
    }
  }
  return fillings;
}

describe('TwoStagePricer.bandsOf', () => {
  it('lists the full bands of a width that are worth so much and need to be so wide, and no others', () => {
    const seen = { listed: 0, none: 0 };
    const side = fc.integer({ min: 2, max: 9 });
    fc.assert(
      fc.property(
        fc.array(fc.record({ length: side, width: side, value: fc.nat(9), wanted: fc.nat(3) }), {
          minLength: 1,
          maxLength: 4,
        }),
        fc.integer({ min: 9, max: 24 }),
        fc.nat(9),
        fc.nat(30),
        fc.nat(3),
        (pieces, length, upTo, least, at) => {
          const lays = pieces.map(({ length, width }, piece) => ({
            piece,
            turned: false,
            length,
            width,
          }));
          const box = { length, width: 12, firstCuts: ['along'] as const, lays };
          const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
          const wanted = pieces.map((piece) => piece.wanted);
          const values = pieces.map((piece) => piece.value);
          const pricer = new TwoStagePricer([box], wanted, limits, undefined);
          const extent = pieces[at % pieces.length].width;
          const place = { box: 0, cuts: 'along', extent } as const;
          const beyond = Math.min(upTo, extent - 1);
          const listed = pricer.bandsOf(values, place, beyond, least, 5000);
          if (listed === undefined) throw new Error('the list is too long');
          const fits = (piece: number) => pieces[piece].width <= extent;
          const along = lays
            .filter(({ piece }) => fits(piece))
            .map(({ piece, length }) => ({ piece, along: length }));
          const taken = (counts: readonly number[]) =>
            counts.reduce((sum, n, i) => sum + n * pieces[i].length, 0);
          const expected = everyFilling(along, length, wanted).filter(
            (counts) =>
              taken(counts) <= length &&
              counts.some((n, i) => n > 0 && pieces[i].width > beyond) &&
              counts.reduce((sum, n, i) => sum + n * values[i], 0) >= least &&
              counts.every(
                (n, i) => !fits(i) || n === wanted[i] || taken(counts) + pieces[i].length > length,
              ),
          );
          const asText = (all: readonly (readonly number[])[]) =>
            all.map((counts) => counts.join(' ')).sort();
          const found = listed.map(({ part }) => {
            const held = new Map(countsOf(part));
            return pieces.map((_, piece) => held.get(piece) ?? 0);
          });
          expect(asText(found)).toEqual(asText(expected));
          seen[found.length > 0 ? 'listed' : 'none']++;
        },
      ),
      { numRuns: 500 },
    );
    expect(seen.listed).toBeGreaterThan(100);
    expect(seen.none).toBeGreaterThan(50);
  });

  it('gives up where there are too many, and knows only widths that strips have', () => {
    const lays = [3, 4, 5].map((along, piece) => ({
      piece,
      turned: false,
      length: along,
      width: 2,
    }));
    const box = { length: 60, width: 60, firstCuts: ['along'] as const, lays };
    const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
    const pricer = new TwoStagePricer([box], [50, 50, 50], limits, undefined);
    const at = (extent: number) => ({ box: 0, cuts: 'along', extent }) as const;
    expect(pricer.bandsOf([3, 4, 5], at(2), 0, 60, 5)).toBeUndefined();
    expect(pricer.bandsOf([3, 4, 5], at(2), 0, 60, 5000)?.length).toBeGreaterThan(5);
    expect(pricer.bandsOf([3, 4, 5], at(3), 0, 60, 5000)).toEqual([]);
    const kept = new TwoStagePricer([box], [50, 50, 50], limits, () => 1);
    expect(kept.bandsOf([3, 4, 5], at(2), 0, 60, 5000)).toBeUndefined();
  });
});

describe('TwoStagePricer.within', () => {
  it('lists every band and division that a pattern within the gap is made of', () => {
    let within = 0;
    let listedLess = 0;
    fc.assert(
      fc.property(
        boxCase({ most: 16 }),
        fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 5, maxLength: 5 }),
        fc.nat(60),
        fc.infiniteStream(fc.double({ min: 0, max: 0.999, noNaN: true })),
        (drawn, wanted, gap, noise) => {
          const [cuts] = drawn.box.firstCuts;
          const box = { ...drawn.box, firstCuts: [cuts] };
          const { limits, values } = drawn;
          const demand = values.map((_, i) => wanted[i]);
          const pricer = new TwoStagePricer([box], demand, limits, undefined);
          const [best] = pricer.price(values, 0).worth;
          const list = pricer.within(values, [best], gap, 20_000);
          const all = pricer.within(values, [best], 1e9, 20_000);
          if (list === undefined || all === undefined) throw new Error('the list is too long');
          if (list.bands.length < all.bands.length) listedLess++;
          const length = cuts === 'along' ? box.length : box.width;
          if (length - limits.kerf > limits.longestCut) return;
          const strips = randomStrips({ ...drawn, box }, cuts, demand, () => noise.next().value);
          const worth = strips.reduce(
            (sum, { counts }) => counts.reduce((part, n, i) => part + n * values[i], sum),
            0,
          );
          expect(worth).toBeLessThanOrEqual(best);
          if (strips.length === 0 || worth < best - gap) return;
          within++;
          const bands = strips.map((strip) => bandFor(strip, list.bands));
          expect(bands).not.toContain(undefined);
          expect(divided(bands, list)).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
    expect(within).toBeGreaterThan(100);
    expect(listedLess).toBeGreaterThan(100);
  });

  it('gives up where there are too many, where remnants have a value or strips may be too narrow', () => {
    const lays = [3, 4, 5, 7].map((side, piece) => ({
      piece,
      turned: false,
      length: side,
      width: side,
    }));
    const box = { length: 60, width: 60, firstCuts: ['along'] as const, lays };
    const limits = { kerf: 0, longestCut: Number.POSITIVE_INFINITY, narrowest: 1 };
    const demand = [50, 50, 50, 50];
    const values = [9, 16, 25, 49];
    const pricer = new TwoStagePricer([box], demand, limits, undefined);
    const [best] = pricer.price(values, 0).worth;
    expect(pricer.within(values, [best], 1e9, 50)).toBeUndefined();
    expect(pricer.within(values, [best], 0, 5000)?.sheets.length).toBeGreaterThan(0);
    const narrow = new TwoStagePricer([box], demand, { ...limits, narrowest: 2 }, undefined);
    expect(narrow.within(values, [best], 0, 5000)).toBeUndefined();
    const kept = new TwoStagePricer([box], demand, limits, () => 1);
    expect(kept.within(values, [best], 0, 5000)).toBeUndefined();
  });
});
