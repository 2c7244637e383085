import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../../environment.test.support.js';
import { DocumentError } from '../../faults/fault.js';
import { offcutOf, sheetsOf } from '../planned-cutting.test.support.js';
import type { Rack } from '../rack.js';
import { RackError } from '../rack-error.js';
import { sqliteRacks } from '../sqlite-racks.js';
import { mutatedTables } from './mutated-tables.test.support.js';
import { readRackCsv } from './read-csv.js';
import { writeRackCsv } from './write-csv.js';

const folder = temporaryFolder();
const racks = sqliteRacks({ now: () => '2026-03-02T09:00:00.000Z', newId: () => 'a rack' });

function freshRack(number: number): Rack {
  const rack = racks.open(join(folder, `${number}.sqlite`));
  rack.add([offcutOf({ bookValue: 120 }), sheetsOf(10), offcutOf({ place: '=1+1' })]);
  return rack;
}

/** What came of taking a table into a rack. */
function takeIn(rack: Rack, text: string): 'taken in' | 'unreadable' | 'refused' {
  try {
    const shelf = { find: (mark: string) => rack.find(mark), marks: () => ['CCY', 'CDV', 'CER'] };
    rack.merge(readRackCsv(text, 'rack.csv', 'mm', shelf));
    return 'taken in';
  } catch (error) {
    if (error instanceof DocumentError) {
      for (const line of error.message.split('\n'))
        expect(line).toMatch(/^rack\.csv: (row \d+(, column [A-Z]+)?: )?\S/);
      expect(error.message).not.toMatch(/undefined|NaN|\[object/);
      return 'unreadable';
    }
    if (error instanceof RackError) return 'refused';
    throw error;
  }
}

test('whatever the table, it is taken in whole, or told to be faulty and not at all', () => {
  let racksMade = 0;
  let rack = freshRack(racksMade);
  const table = writeRackCsv(rack.list(), { units: 'mm', semicolons: false });
  const seen = { 'taken in': 0, unreadable: 0, refused: 0 };
  fc.assert(
    fc.property(mutatedTables(table), (text) => {
      const { revision } = rack;
      const before = rack.list({ gone: true });
      const outcome = takeIn(rack, text);
      seen[outcome] += 1;
      if (outcome === 'taken in') {
        // Whatever it was, the rack is one that can be written and read again.
        const now = rack.list();
        expect(takeIn(rack, writeRackCsv(now, { units: 'in', semicolons: true }))).toBe('taken in');
        expect(rack.list()).toEqual(now);
      } else {
        expect(rack.revision).toBe(revision);
        expect(rack.list({ gone: true })).toEqual(before);
      }
      if (rack.list().length > 30) {
        rack.close();
        racksMade += 1;
        rack = freshRack(racksMade);
      }
    }),
    { numRuns: 2000 },
  );
  rack.close();
  // The edits are neither all harmless nor all fatal.
  expect(seen['taken in']).toBeGreaterThan(200);
  expect(seen.unreadable).toBeGreaterThan(200);
});
