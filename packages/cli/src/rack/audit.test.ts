import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../environment.test.support.js';
import { auditRack } from './audit.test.support.js';
import { cuttingOf, offcutOf, plannedOf } from './planned-cutting.test.support.js';
import { sqliteRacks } from './sqlite-racks.js';

const folder = temporaryFolder();
let racks = 0;

/** The path of a rack on which a plan was booked and another is held. */
function bookedRack(): string {
  racks++;
  const path = join(folder, `${racks}.sqlite`);
  const rack = sqliteRacks({ now: () => 'now', newId: () => 'id' }).open(path);
  const [one = '', two = ''] = rack.add([offcutOf(), offcutOf()]);
  rack.book(cuttingOf('p', [{ stock: plannedOf(one, offcutOf()) }]));
  rack.hold(cuttingOf('q', [{ stock: plannedOf(two, offcutOf()) }]));
  rack.close();
  return path;
}

describe('the audit of a rack', () => {
  it('finds nothing wrong with a rack that is whole', () => {
    expect(auditRack(bookedRack())).toEqual([]);
  });

  it.each([
    ['an offcut that is back', 'UPDATE stock SET count = 1 WHERE number = 1'],
    ['a promise that nobody holds', 'DELETE FROM promise'],
    ['a promise that is forgotten', 'UPDATE stock SET promised = 0'],
    ['a booking without its layouts', 'DELETE FROM booked_layout'],
    ['a booking that kept nothing', "DELETE FROM event WHERE deed = 'kept'"],
    ['a booking that took nothing', "DELETE FROM event WHERE deed = 'cut'"],
    ['a booking undone in part', "UPDATE booking SET undone_at = 'now'"],
    ['a layout booked twice', 'UPDATE booked_layout SET times = 2'],
    [
      'an offcut cut twice',
      `INSERT INTO event (at, stock, deed, change, promised_change, job, booking, note)
         SELECT at, stock, deed, change, promised_change, job, booking, note FROM event
         WHERE deed = 'cut'`,
    ],
  ])('finds %s', (_, spoil) => {
    const path = bookedRack();
    const connection = new Database(path);
    connection.exec(spoil);
    connection.close();
    expect(auditRack(path)).not.toEqual([]);
  });
});
