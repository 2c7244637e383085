import { once } from 'node:events';
import type { PlannedCutting } from './rack.js';
import { RackError } from './rack-error.js';
import { sqliteRacks } from './sqlite-racks.js';

// Run as a program: books each plan that it is sent, on the rack of the first argument,
// and answers with the code of the refusal, `booked`, or an error that none should see.
const [, , path = ''] = process.argv;
const racks = sqliteRacks({ now: () => new Date().toISOString(), newId: () => 'contended' });

function book(cutting: PlannedCutting): string {
  try {
    // Opened anew each time, as the command does.
    const rack = racks.open(path);
    try {
      rack.book(cutting);
      return 'booked';
    } finally {
      rack.close();
    }
  } catch (error) {
    return error instanceof RackError ? error.code : `fault: ${String(error)}`;
  }
}

process.on('message', (cutting: PlannedCutting) => process.send?.(book(cutting)));
process.send?.('ready');
await once(process, 'disconnect');
