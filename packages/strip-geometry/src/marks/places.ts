import type { BendRun, CurveRun, FlatRun, Run } from '../develop.js';

/** A place on the strip where something begins or ends, so that a hand needs a mark there. */
export interface Place {
  /** True distance from the square end, millimetres. */
  readonly at: number;
  /** The bend that has its middle here. */
  readonly bend?: { readonly number: number; readonly run: BendRun };
}

/** What lies between two places that follow each other. */
export type Stretch =
  | { readonly kind: 'flat'; readonly from: number; readonly to: number }
  | {
      readonly kind: 'curve';
      readonly from: number;
      readonly to: number;
      /** 1 for the first curve from the square end. */
      readonly number: number;
      readonly run: CurveRun;
    }
  /** Two bends that touch. */
  | { readonly kind: 'none'; readonly from: number; readonly to: number };

/** The strip as places with a stretch between each and the next. */
export interface Places {
  /** Ascending; the first and the last are the ends of the outline's part of the strip. */
  readonly places: readonly Place[];
  /** One fewer than the places. */
  readonly stretches: readonly Stretch[];
}

/**
 * Divides a development at its places: the ends, the middle of each bend, and
 * each joint of a curve with what lies beside it. Flats that run on straight
 * are one. A development that ends with a bend has its last place in the middle of that bend.
 */
export function placesOf(runs: readonly Run[]): Places {
  const places: Place[] = [{ at: runs[0]?.from ?? 0 }];
  const stretches: Stretch[] = [];
  let open: Stretch | undefined;
  let [bends, curves] = [0, 0];
  const close = (place: Place, at: number) => {
    stretches.push(open ?? { kind: 'none', from: at, to: at });
    places.push(place);
    open = undefined;
  };
  for (const run of runs) {
    if (run.kind === 'bend') {
      bends++;
      close({ at: (run.from + run.to) / 2, bend: { number: bends, run } }, run.from);
    } else if (run.kind === 'flat' && open?.kind === 'flat') {
      open = { ...open, to: run.to };
    } else {
      if (open !== undefined) {
        close({ at: run.from }, run.from);
      }
      open = stretchOf(run, run.kind === 'curve' ? ++curves : 0);
    }
  }
  if (open !== undefined) {
    close({ at: open.to }, open.to);
  }
  return { places, stretches };
}

function stretchOf(run: FlatRun | CurveRun, number: number): Stretch {
  const { from, to } = run;
  return run.kind === 'flat'
    ? { kind: 'flat', from, to }
    : { kind: 'curve', from, to, number, run };
}
