import { randomDeed } from './random-deeds.test.support.js';
import { sqliteRacks } from './sqlite-racks.js';

// Run as a program: deeds on the rack of the first argument until it is killed. After
// each it says which revision of the rack has it, and what it was.
const [, , path = '', name = ''] = process.argv;
const racks = sqliteRacks({ now: () => new Date().toISOString(), newId: () => name });
const rack = racks.open(path);
for (let deed = 1; ; deed++) {
  const done = randomDeed(rack, `${name} ${deed}`, Math.random);
  process.stdout.write(`${rack.revision} ${done}\n`);
}
