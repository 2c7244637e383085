import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../../environment.test.support.js';
import { SHOP_UNITS } from '../../length/unit.js';
import { sqliteRacks } from '../sqlite-racks.js';
import { stocks } from './random-stock.test.support.js';
import { readRackCsv, type Shelf } from './read-csv.js';
import { writeRackCsv } from './write-csv.js';

const folder = temporaryFolder();
const racks = sqliteRacks({ now: () => '2026-03-02T09:00:00.000Z', newId: () => 'a rack' });
const styles = fc.record({ units: fc.constantFrom(...SHOP_UNITS), semicolons: fc.boolean() });
let made = 0;

const newRack = () => {
  made += 1;
  return racks.open(join(folder, `${made}.sqlite`));
};

describe('a rack written and read again', () => {
  test('into itself changes nothing', () => {
    fc.assert(
      fc.property(fc.array(stocks, { maxLength: 20 }), styles, (stock, style) => {
        const rack = newRack();
        rack.add(stock);
        const before = rack.list();
        const shelf: Shelf = { find: (mark) => rack.find(mark), marks: () => [] };
        const lines = readRackCsv(writeRackCsv(before, style), 'rack.csv', style.units, shelf);
        expect(rack.merge(lines)).toEqual({ added: [], corrected: [], unchanged: before.length });
        expect(rack.list()).toEqual(before);
        rack.close();
      }),
      { numRuns: 150 },
    );
  });

  test('into another, without its marks, is as it was but for those', () => {
    fc.assert(
      fc.property(fc.array(stocks, { minLength: 1, maxLength: 20 }), styles, (stock, style) => {
        const [rack, other] = [newRack(), newRack()];
        rack.add(stock);
        const before = rack.list().map((one) => ({ ...one, mark: '' }));
        const shelf: Shelf = { find: () => undefined, marks: () => [] };
        other.merge(readRackCsv(writeRackCsv(before, style), 'rack.csv', style.units, shelf));
        expect(other.list().map((one) => ({ ...one, mark: '' }))).toEqual(before);
        rack.close();
        other.close();
      }),
      { numRuns: 100 },
    );
  });
});
