import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../../environment.test.support.js';
import { SHOP_UNITS } from '../../length/unit.js';
import type { Rack } from '../rack.js';
import { sqliteRacks } from '../sqlite-racks.js';
import { stocks } from './random-stock.test.support.js';
import { readRackCsv, type Shelf } from './read-csv.js';
import { writeRackCsv } from './write-csv.js';

const NOW = '2026-03-02T09:00:00.000Z';
const folder = temporaryFolder();
const racks = sqliteRacks({ now: () => NOW, newId: () => 'a rack' });
const styles = fc.record({ units: fc.constantFrom(...SHOP_UNITS), semicolons: fc.boolean() });
let made = 0;

const MOST = 60;

const newRack = () => {
  made += 1;
  return racks.open(join(folder, `${made}.sqlite`));
};

/** The rack, or a new one in place of one that has grown large: to make one takes long. */
function notTooLarge(rack: Rack): Rack {
  if (rack.list().length < MOST) return rack;
  rack.close();
  return newRack();
}

describe('a rack written and read again', () => {
  test('into itself changes nothing', () => {
    let rack = newRack();
    fc.assert(
      fc.property(fc.array(stocks, { maxLength: 20 }), styles, (stock, style) => {
        rack = notTooLarge(rack);
        rack.add(stock);
        const before = rack.list();
        const shelf: Shelf = { find: (mark) => rack.find(mark), marks: () => [] };
        const lines = readRackCsv(writeRackCsv(before, style), 'rack.csv', style.units, shelf);
        expect(rack.merge(lines)).toEqual({ added: [], corrected: [], unchanged: before.length });
        expect(rack.list()).toEqual(before);
      }),
      { numRuns: 150 },
    );
    rack.close();
  });

  test('without its marks is the same offcuts anew', () => {
    let other = newRack();
    fc.assert(
      fc.property(fc.array(stocks, { minLength: 1, maxLength: 20 }), styles, (stock, style) => {
        other = notTooLarge(other);
        const offcuts = stock.filter(({ kind }) => kind === 'offcut');
        const there = other.list().length;
        const told = offcuts.map((one) => ({ ...one, mark: '', promised: 0, addedAt: NOW }));
        const shelf: Shelf = { find: () => undefined, marks: () => [] };
        other.merge(readRackCsv(writeRackCsv(told, style), 'rack.csv', style.units, shelf));
        const came = other.list().slice(there);
        expect(came.map((one) => ({ ...one, mark: '' }))).toEqual(told);
      }),
      { numRuns: 150 },
    );
    other.close();
  });
});
