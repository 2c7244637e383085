import type { Run } from '../develop.js';
import type { Strip } from '../strip.js';

/** A flat of the finished cutter. Places on the strip, millimetres. */
export interface Flat {
  readonly from: number;
  readonly to: number;
  /** With what lies beyond the seam, where the ends of the strip join in the middle of a flat. */
  readonly length: number;
  readonly besideBend: boolean;
}

/** The flats of a strip, those that the seam divides as one flat at each end. */
export function flatsOf({ runs }: Pick<Strip, 'runs'>): Flat[] {
  const count = runs.length;
  const [first, last] = [runs[0], runs[count - 1]];
  const isDivided = count > 1 && first?.kind === 'flat' && last?.kind === 'flat';
  return runs.flatMap((run, index): Flat[] => {
    if (run.kind !== 'flat') {
      return [];
    }
    const beyond = !isDivided
      ? undefined
      : index === 0
        ? last
        : index === count - 1
          ? first
          : undefined;
    const beside = [runs[(index - 1 + count) % count], runs[(index + 1) % count]];
    const { from, to } = run;
    return [
      {
        from,
        to,
        length: lengthOf(run) + (beyond === undefined ? 0 : lengthOf(beyond)),
        besideBend: beside.some((other) => other?.kind === 'bend'),
      },
    ];
  });
}

function lengthOf({ from, to }: Run): number {
  return to - from;
}
