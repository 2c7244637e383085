import type { RoomCuts } from './room-cuts.js';

export interface AnnealRequest {
  readonly cuts: RoomCuts;
  /** For each sheet, its pattern. */
  readonly start: Int32Array;
  /** For each pattern, those of the same stock. */
  readonly alternatives: readonly (readonly number[])[];
  /** The room that all cuts should allow. */
  readonly goal: number;
  /** How many sheets may be cut otherwise than at the start. */
  readonly changes: number;
  readonly random: () => number;
}

export interface Annealed {
  /** For each sheet, its pattern. */
  readonly sheets: Int32Array;
  /** The room that the cuts allow them, no more than the goal. */
  readonly room: number;
}

const STEPS = 40_000;
/** Temperatures at the start, in what is amiss there, and at the end. */
const HOT = 0.3;
const COLD = 1e-12;

/**
 * Changes the patterns of a few sheets until all cuts allow the goal: simulated annealing
 * (Kirkpatrick, Gelatt, Vecchi 1983) of the squares of what they fall short by.
 */
export function annealSheets(request: AnnealRequest): Annealed {
  const { cuts, start, alternatives, goal, changes, random } = request;
  const { count, added } = cuts;
  const sheets = Int32Array.from(start);
  const atStart = new Int32Array(alternatives.length);
  for (const pattern of start) atStart[pattern]++;
  const now = Int32Array.from(atStart);
  const rooms = Float64Array.from({ length: count }, (_, cut) => cuts.mostBy(cut, now));
  let amiss = rooms.reduce((sum, room) => sum + Math.max(0, goal - room) ** 2, 0);
  const hot = amiss * HOT;
  let changed = 0;
  for (let step = 0; step < STEPS && amiss > 0; step++) {
    const at = Math.floor(random() * sheets.length);
    const old = sheets[at];
    const others = alternatives[old];
    const fresh = others[Math.floor(random() * others.length)];
    if (fresh === old) continue;
    const after =
      changed + (now[fresh] >= atStart[fresh] ? 1 : 0) - (now[old] > atStart[old] ? 1 : 0);
    if (after > changes) continue;
    const heat = hot * (1 - step / STEPS) ** 2 + COLD;
    const most = amiss - heat * Math.log(random());
    const [from, to] = [cuts.at(old), cuts.at(fresh)];
    let next = 0;
    // The last cuts are those of the sheets it starts from: they refuse most changes.
    for (let cut = count - 1; cut >= 0 && next <= most; cut--) {
      const short = goal - rooms[cut] + added[from + cut] - added[to + cut];
      if (short > 0) next += short * short;
    }
    if (next > most) continue;
    for (let cut = 0; cut < count; cut++) rooms[cut] += added[to + cut] - added[from + cut];
    sheets[at] = fresh;
    now[old]--;
    now[fresh]++;
    changed = after;
    amiss = next;
  }
  return { sheets, room: rooms.reduce((least, room) => Math.min(least, room), goal) };
}
