import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../environment.test.support.js';
import { auditRack } from './audit.test.support.js';
import { cuttingOf, offcutOf, plannedOf } from './planned-cutting.test.support.js';
import { sqliteRacks } from './sqlite-racks.js';

const PROCESSES = 8;
const ROUNDS = 200;
/** Offcuts of a round; each plan takes two of them. */
const OFFCUTS = 8;

// The program runs as it is built, in processes of their own.
const program = fileURLToPath(
  new URL('../../dist/rack/contended-rack.test.support.js', import.meta.url),
);
const racks = sqliteRacks({ now: () => '2026-03-02T09:00:00.000Z', newId: () => 'parent' });

async function answer(child: ChildProcess): Promise<string> {
  const [text] = await once(child, 'message');
  return String(text);
}

describe('a rack that eight processes book on at once', () => {
  it(`uses each offcut once at most, over ${ROUNDS} rounds`, { timeout: 1_200_000 }, async () => {
    const path = join(temporaryFolder(), 'rack.sqlite');
    const children = Array.from({ length: PROCESSES }, () => fork(program, [path]));
    try {
      await Promise.all(children.map(answer));
      const answers = new Map<string, number>();
      let booked = 0;
      for (let round = 0; round < ROUNDS; round++) {
        // The first round makes the rack, by all of them at once.
        const marks = round === 0 ? [] : putOffcuts(path);
        const asked = children.map((child, index) => {
          const picked = marks.slice(index % (OFFCUTS - 1), (index % (OFFCUTS - 1)) + 2);
          const cutting = cuttingOf(`round ${round} process ${index}`, [
            ...picked.map((mark) => ({ stock: plannedOf(mark, offcutOf()) })),
            ...(round === 0
              ? [{ stock: plannedOf(undefined, offcutOf({ kind: 'sheets' }), { bought: 1 }) }]
              : []),
          ]);
          const told = answer(child);
          child.send(cutting);
          return told;
        });
        for (const text of await Promise.all(asked)) {
          answers.set(text, (answers.get(text) ?? 0) + 1);
          if (text === 'booked' && round > 0) booked++;
        }
        // Eight plans want each two of eight neighbours in turn: three at least can be had.
        expect(booked).toBeGreaterThanOrEqual(3 * round);
      }
      // Nothing but success and the clear refusal that the metal is gone.
      expect([...answers.keys()].sort()).toEqual(['booked', 'not enough']);
      expect(auditRack(path)).toEqual([]);
      const rack = racks.open(path);
      const gone = rack.list({ gone: true }).filter(({ count, origin }) => {
        return count === 0 && origin === 'spring order';
      });
      expect(gone).toHaveLength(2 * booked);
      rack.close();
    } finally {
      for (const child of children) child.disconnect();
      await Promise.all(children.map((child) => once(child, 'exit')));
    }
  });
});

function putOffcuts(path: string): readonly string[] {
  const rack = racks.open(path);
  const marks = rack.add(Array.from({ length: OFFCUTS }, () => offcutOf()));
  rack.close();
  return marks;
}
