import { toRadians } from '../angle.js';
import { findCorners, turnsAt } from './corners.js';
import type { Trace } from './trace.js';

/** Corners are looked for with arms of the usual length, and if need be with shorter ones. */
const ARMS = [1, 0.5];

/** Corners that turn less may be no more than the steps of a coarse trace. */
const LARGE_CORNER = toRadians(50);

/** Where the corners of a trace may be, the likeliest first. */
export function cornerGuesses({ ring, spacing }: Trace): readonly (readonly number[])[] {
  const length = ring.size * spacing;
  const reach = Math.min(Math.max(length / 80, 2), 5);
  const guesses: (readonly number[])[] = [];
  const add = (corners: readonly number[]) => {
    if (!guesses.some((known) => known.join() === corners.join())) {
      guesses.push(corners);
    }
  };
  for (const share of ARMS) {
    const arm = Math.round((share * reach) / spacing);
    add(findCorners(ring, Math.max(Math.min(arm, Math.floor(ring.size / 12)), 4)));
  }
  const wide = Math.max(Math.min(Math.round(reach / spacing), Math.floor(ring.size / 12)), 4);
  const turns = turnsAt(ring, wide);
  add((guesses[0] ?? []).filter((corner) => Math.abs(turns(corner)) >= LARGE_CORNER));
  return guesses;
}
