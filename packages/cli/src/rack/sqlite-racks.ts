import type { Racks } from './rack.js';
import { RackError } from './rack-error.js';
import { SqliteRack } from './sqlite-rack.js';
import { createRackFile, isThere, openRackFile } from './store/rack-file.js';

/** What racks take from outside. */
export interface RackSurroundings {
  /** The time, as an ISO 8601 text in UTC. */
  readonly now: () => string;
  /** A text that no other rack has for its id. */
  readonly newId: () => string;
}

/** Racks kept as SQLite files. */
export function sqliteRacks({ now, newId }: RackSurroundings): Racks {
  const openIfThere = (path: string) =>
    isThere(path) ? new SqliteRack(openRackFile(path), path, now) : undefined;
  return {
    openIfThere,
    open(path) {
      if (!isThere(path)) createRackFile(path, newId());
      const rack = openIfThere(path);
      if (rack === undefined) {
        throw new RackError('cannot be opened', `${path}: it is gone again; try once more`);
      }
      return rack;
    },
  };
}
