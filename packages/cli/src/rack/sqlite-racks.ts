import type { Racks } from './rack.js';

/** What racks take from outside. */
export interface RackSurroundings {
  /** The time, as an ISO 8601 text in UTC. */
  readonly now: () => string;
  /** A text that no other rack has for its id. */
  readonly newId: () => string;
}

/** Racks kept as SQLite files. */
export function sqliteRacks(_surroundings: RackSurroundings): Racks {
  const open = () => {
    throw new Error('still to come');
  };
  return { open, openIfThere: open };
}
