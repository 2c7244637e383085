import Database from 'better-sqlite3';
import { offcutOf } from './planned-cutting.test.support.js';
import { RackError } from './rack-error.js';
import { sqliteRacks } from './sqlite-racks.js';

// Run as a program: puts offcuts on the rack of the first argument, as a user who may
// only what all may where the second says `nobody`, until it is refused. Prints what
// came of it as JSON.
const [, , path = '', who] = process.argv;
// What runs natively is loaded first: a program of nobody may not be able to read it.
new Database(':memory:').close();
if (who === 'nobody' && process.getuid?.() === 0) process.setuid?.(65_534);

const MOST = 10_000;

const racks = sqliteRacks({ now: () => new Date().toISOString(), newId: () => 'strained' });

function strain(): unknown {
  let added = 0;
  try {
    const rack = racks.open(path);
    try {
      for (; added < MOST; added++) rack.add([offcutOf({ place: 'shelf '.repeat(20) })]);
    } catch (error) {
      return { added, ...told(error), listed: rack.list().length };
    } finally {
      rack.close();
    }
    return { added };
  } catch (error) {
    return { added, ...told(error) };
  }
}

function told(error: unknown): object {
  if (!(error instanceof RackError)) return { fault: String(error) };
  return { code: error.code, message: error.message };
}

process.stdout.write(JSON.stringify(strain()));
