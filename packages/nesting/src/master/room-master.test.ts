import fc from 'fast-check';
import lpSolver from 'javascript-lp-solver';
import { describe, expect, it } from 'vitest';
import { piece, sheet } from '../plan-cutting.test.support.js';
import { pricedGround } from './priced-book.test.support.js';
import { RoomMaster } from './room-master.js';

// See the engine: the package's types describe its CommonJS build.
const solver = lpSolver as unknown as typeof lpSolver.default;

const { book, demand, engines } = pricedGround({
  pieces: [piece('a', 37, 5, 9), piece('b', 29, 4, 14), piece('c', 18, 7, 11)],
  stock: [sheet('s', 90, 30, { price: 7 }), sheet('t', 60, 25, { price: 4 })],
  shear: { firstCut: 'either' },
});

/** Broken numbers too. */
const anySlots = fc.array(
  fc.nat(6).map((quarters) => quarters / 4),
  { minLength: book.slots.length, maxLength: book.slots.length },
);

/** The room by a model of its own: a general-purpose solver, all transfers between slots written out. */
function roomBySolver(slots: readonly number[]): number {
  const constraints: Record<string, { min: number } | { max: number }> = {};
  const variables: Record<string, Record<string, number>> = {};
  // Room from 50 lacking on, since the solver's variables are at least 0.
  const lowest = 50;
  variables.room = { measure: 1, most: 1 };
  demand.forEach((quantity, i) => {
    constraints[`piece ${i}`] = { min: quantity - lowest };
    variables.room[`piece ${i}`] = -1;
  });
  slots.forEach((count, slot) => {
    constraints[`slot ${slot}`] = { max: count };
  });
  book.bands.forEach(({ slot, counts }, band) => {
    book.slots.forEach((_, wider) => {
      if (wider !== slot && !book.mayLieIn(slot, wider)) return;
      const entries = counts.map(([i, copies]) => [`piece ${i}`, copies] as const);
      variables[`${band} in ${wider}`] = { ...Object.fromEntries(entries), [`slot ${wider}`]: 1 };
    });
  });
  constraints.most = { max: lowest + 6 };
  const model = { optimize: 'measure', opType: 'max' as const, constraints, variables };
  const answer = solver.Solve(model);
  if (typeof answer !== 'object' || answer === null || !('result' in answer)) throw new Error();
  return Number(answer.result) - lowest;
}

describe('RoomMaster', () => {
  it('tells the room that a model of its own tells', async () => {
    const master = new RoomMaster({ demand, book, engines });
    const seen = { room: 0, lack: 0 };
    await fc.assert(
      fc.asyncProperty(anySlots, async (slots) => {
        const answer = await master.solve(slots, 20);
        if (answer === undefined) throw new Error('no answer');
        expect(answer.room).toBeCloseTo(roomBySolver(slots), 5);
        seen[answer.room > 0 ? 'room' : 'lack']++;
      }),
      { numRuns: 60 },
    );
    master.close();
    expect(seen.room).toBeGreaterThan(5);
    expect(seen.lack).toBeGreaterThan(5);
  });

  it('bounds the room of any other slots by the worth of those that come or go', async () => {
    const master = new RoomMaster({ demand, book, engines });
    let close = 0;
    await fc.assert(
      fc.asyncProperty(anySlots, anySlots, async (here, there) => {
        const [one, other] = [await master.solve(here, 20), await master.solve(there, 20)];
        if (one === undefined || other === undefined) throw new Error('no answer');
        const bound = there.reduce(
          (sum, count, slot) => sum + (one.worth[slot] ?? 0) * (count - here[slot]),
          one.room,
        );
        expect(one.worth.every((worth) => worth >= -1e-9)).toBe(true);
        expect(other.room).toBeLessThanOrEqual(bound + 1e-6);
        if (bound < other.room + 1) close++;
      }),
      { numRuns: 60 },
    );
    master.close();
    expect(close).toBeGreaterThan(3);
  });

  it('lacks all of the piece that is wanted most where there is no slot', async () => {
    const master = new RoomMaster({ demand, book, engines });
    const none = await master.solve(new Float64Array(book.slots.length), 20);
    master.close();
    expect(none?.room).toBeCloseTo(-14, 6);
  });
});
