import type { Environment } from '../../environment.js';
import type { Rack } from '../../rack/rack.js';
import type { Given } from '../command.js';
import { namedRack, rackOption } from '../rack-options.js';

/** Which rack is meant. */
export const RACK_OPTION = { rack: rackOption() };

/**
 * Opens the rack that is meant, which is made where there is none, for as long as it is used.
 * @throws CommandError, RackError
 */
export async function withRack<T>(
  given: Given,
  environment: Environment,
  use: (rack: Rack) => T | Promise<T>,
): Promise<T> {
  const rack = namedRack(given, environment);
  try {
    return await use(rack);
  } finally {
    rack.close();
  }
}
