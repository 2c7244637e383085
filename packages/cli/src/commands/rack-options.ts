import { dirname, resolve } from 'node:path';
import type { Environment } from '../environment.js';
import { CommandError, EXIT } from '../exit-code.js';
import { complaintText } from '../faults/fault-text.js';
import type { Rack } from '../rack/rack.js';
import { type Given, textOption } from './command.js';

/** The option that names a rack. */
export const rackOption = () => textOption('the file of the rack; made if there is none');

/**
 * The rack of a command that works on one: that of `--rack`, else the usual one.
 * Made if there is none.
 * @throws CommandError, RackError
 */
export function namedRack(given: Given, environment: Environment): Rack {
  const named = rackGiven(given);
  const { cwd, racks, usualRack } = environment;
  return racks.open(named === undefined ? usualRack : resolve(cwd, named));
}

/**
 * The rack that a plan is made from: that of `--rack`, else that of the order, its
 * path from the folder of the order, else the usual one if it is there; none with `--no-rack`.
 * @param order the file of the order, and what it says of a rack
 * @throws CommandError, RackError
 */
export function rackToPlanFrom(
  given: Given,
  order: { readonly file: string; readonly rack?: string | undefined },
  { cwd, racks, usualRack }: Environment,
): Rack | undefined {
  const named = rackGiven(given);
  if (given.flag('no-rack')) {
    if (named === undefined) return undefined;
    throw new CommandError(EXIT.badInput, 'give --rack or --no-rack, not both');
  }
  if (named !== undefined) return racks.open(resolve(cwd, named));
  if (order.rack === undefined) return racks.openIfThere(usualRack);
  return racks.open(resolve(cwd, dirname(order.file), order.rack));
}

function rackGiven(given: Given): string | undefined {
  const named = given.text('rack');
  if (named?.trim() !== '') return named;
  const complaint = { code: 'missing', hint: 'the file of a rack' } as const;
  throw new CommandError(EXIT.badInput, complaintText('--rack', complaint));
}
