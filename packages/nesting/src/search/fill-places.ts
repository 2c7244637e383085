import { Master } from '../solvers/engine-choice.js';
import type { LinearColumn, LinearRow } from '../solvers/linear-model.js';
import type { BandPlace } from './band-places.js';
import type { SearchGround } from './ground.js';

export interface PlacesRequest {
  readonly places: readonly BandPlace[];
  /** By slot, how many there are. */
  readonly slots: readonly number[];
  /** Multipliers of the pieces and the slots in the linear plan of the bands. */
  readonly duals: { readonly pieces: readonly number[]; readonly slots: readonly number[] };
  /** Measures of spare pieces that the linear plan cuts. */
  readonly room: number;
  /** Nodes that the integer master may take. */
  readonly nodes: number;
}

/** Share of the time left that one integer master may take. */
const SHARE_OF_TIME = 0.25;
/** By how much rounding may have made the room too small. */
const SLACK = 1e-6;

/**
 * Whole bands in the places given, so that every piece is cut, by an integer master.
 *
 * What whole bands lose, what slots left empty are worth and what spare copies are worth come
 * to the room together, whatever the bands (all of a linear plan's slots are worth its pieces
 * and its room). So a slot worth more than the room is filled, a piece worth more has no spare
 * copy, and a band is cut no more often than the room lasts. Engines do not see that by
 * themselves; told it, they find or rule out whole bands several times as fast.
 * @returns by place, how many bands; 'infeasible' where none will do, 'stopped' where none were found
 */
export async function fillPlaces(
  { demand, engines, deadline, effort }: SearchGround,
  { places, slots, duals, room, nodes }: PlacesRequest,
): Promise<readonly number[] | 'infeasible' | 'stopped'> {
  const most = room * (1 + SLACK) + SLACK;
  const used = [...slots.keys()].filter((slot) => slots[slot] > 0);
  const rowOf = new Map(used.map((slot, index) => [slot, demand.length + index]));
  const rows: LinearRow[] = [
    ...demand.map(
      (bound, piece): LinearRow => ({
        sense: duals.pieces[piece] > most ? 'exactly' : 'at least',
        bound,
      }),
    ),
    ...used.map(
      (slot): LinearRow => ({
        sense: duals.slots[slot] > most ? 'exactly' : 'at most',
        bound: slots[slot],
      }),
    ),
  ];
  const columns = places.map(({ slot, loss, copies }): LinearColumn => {
    const row = rowOf.get(slot);
    if (row === undefined) throw new Error(`there is no slot ${slot}`);
    return {
      cost: 0,
      upper: Math.min(slots[slot], loss > 0 ? Math.floor(most / loss) : slots[slot]),
      rows: [...copies.map(([piece]) => piece), row],
      coefficients: [...copies.map(([, count]) => count), 1],
    };
  });
  const master = new Master(rows, engines);
  try {
    master.add(columns);
    effort.integerMasters++;
    const seconds = deadline.left() * SHARE_OF_TIME;
    const answer = await master.solve({ integer: true, seconds, nodes });
    if (answer.status === 'infeasible') return 'infeasible';
    if (answer.status === 'rejected' || answer.values === undefined) return 'stopped';
    return answer.values;
  } finally {
    master.close();
  }
}
