import type { CuttingProblem, Piece } from '@stripwright/nesting';
import type { Rack, RackStock, ShopKeepRule } from '../rack/rack.js';

/** What a plan sees of a rack: all as of one revision. */
export interface RackView {
  readonly id: string;
  readonly revision: number;
  /** Offcuts of the metal, promised to nobody and not too small. Oldest first. */
  readonly offcuts: readonly RackStock[];
  /** Whole sheets of the metal, those that are promised included. */
  readonly sheets: readonly RackStock[];
  readonly keepRules: readonly ShopKeepRule[];
}

/** More than arithmetic and a file's rounding can shift a length by, in millimetres. */
const DUST = 1e-4;
const MOST_TRIES = 10;

/**
 * Reads off a rack what may serve a problem.
 * @param metal the name of the metal that the pieces are of
 * @param mark the length of a tick
 */
export function viewRack(
  rack: Rack,
  { pieces }: CuttingProblem,
  metal: string,
  mark: number,
): RackView {
  const least = (side: (piece: Piece) => number) =>
    Math.max(0, Math.min(...pieces.map(side)) * mark - DUST);
  const leastLength = least(({ length, width }) => Math.max(length, width));
  const leastWidth = least(({ length, width }) => Math.min(length, width));
  const view = (): RackView => ({
    id: rack.id,
    revision: rack.revision,
    offcuts: rack.list({ kind: 'offcut', metal, leastLength, leastWidth, free: true }),
    sheets: rack.list({ kind: 'sheets', metal }),
    keepRules: rack.keepRules(),
  });
  let seen = view();
  // Another may change it meanwhile; if others never rest, a booking tells what is gone.
  for (let tries = 0; rack.revision !== seen.revision && tries < MOST_TRIES; tries += 1) {
    seen = view();
  }
  return seen;
}
