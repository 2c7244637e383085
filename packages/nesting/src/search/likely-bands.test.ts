import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BandMaster } from '../master/band-master.js';
import { solveLinear } from '../master/column-generation.js';
import { LARGE, randomOfKind } from '../random-kinds.test.support.js';
import { groundOf } from './ground.test.support.js';
import { withLikelyBands } from './likely-bands.js';

const size = { ...LARGE, total: 80, pieceTypes: 4 };

describe('withLikelyBands', () => {
  it('keeps what is known in its order, and adds bands of its slots that fall short by little', async () => {
    const seen = { added: 0, fewer: 0 };
    await fc.assert(
      fc.asyncProperty(
        randomOfKind({ offcuts: true }, size),
        fc.constantFrom(0.02, 0.5),
        fc.constantFrom(2, 80),
        async (problem, share, most) => {
          const { ground, start } = groundOf({ ...problem, keep: [] });
          if (start === undefined) return;
          for (const { pattern } of start) ground.book.addPattern(pattern);
          const master = new BandMaster(ground);
          const { answer } = await solveLinear({ ...ground, master, enough: () => false });
          master.close();
          const duals = answer?.duals;
          if (duals === undefined) return;
          const known = ground.newBook();
          known.adopt(ground.book, [...ground.book.bands.keys()], [...ground.book.sheets.keys()]);
          const short = share * Math.max(...duals.classes);
          const listing = { most, short };
          const book = withLikelyBands(ground, known, ground.demand, duals, listing);
          expect(book.bands.slice(0, known.bands.length).map(({ counts }) => counts)).toEqual(
            known.bands.map(({ counts }) => counts),
          );
          expect(book.sheets).toHaveLength(known.sheets.length);
          expect(book.slots).toHaveLength(known.slots.length);
          const fresh = book.bands.slice(known.bands.length);
          const ofSlot = book.slots.map(() => 0);
          for (const { slot, counts } of fresh) {
            ofSlot[slot]++;
            const at = known.find(book.slots[slot]);
            if (at === undefined) throw new Error('a slot that was not known');
            const worth = counts.reduce((sum, [i, copies]) => sum + copies * duals.pieces[i], 0);
            expect(worth).toBeGreaterThanOrEqual((duals.slots[at] ?? 0) - short - 1e-6);
            // A piece that may turn may lie as often either way.
            const ways = (i: number) => (problem.pieces[i].mayTurn ? 2 : 1);
            expect(counts.every(([i, copies]) => copies <= ways(i) * ground.demand[i])).toBe(true);
          }
          expect(Math.max(...ofSlot)).toBeLessThanOrEqual(most);
          seen.added += fresh.length;
          if (most === 2 && fresh.length > 0) seen.fewer++;
        },
      ),
      { numRuns: 40 },
    );
    expect(seen.added).toBeGreaterThan(50);
    expect(seen.fewer).toBeGreaterThan(2);
  });
});
