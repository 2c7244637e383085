import type { Cut, Layout } from '../plan.js';
import type { Shear, Stock } from '../problem.js';
import type { PlanFault } from './plan-fault.js';

/** A rectangle on the bench, with the stage of the cut that freed it (0 for the whole stock). */
interface Metal {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  readonly stage: number;
}

/**
 * Makes the cuts of a layout one by one on an imagined sheet. Each must run from
 * edge to edge of one rectangle that lies on the bench, be of a stage that this
 * rectangle still allows, run the way its stage runs, and be within the shear's
 * reach. What lies there in the end must be the pieces and the remnants.
 */
export function replayCuts(
  layout: Layout,
  stock: Stock,
  shear: Shear,
): readonly Omit<PlanFault, 'layout'>[] {
  const faults: Omit<PlanFault, 'layout'>[] = [];
  let bench: readonly Metal[] = [
    { x: 0, y: 0, length: stock.length, width: stock.width, stage: 0 },
  ];
  const firstRuns = firstDirection(layout.cuts);
  layout.cuts.forEach((cut, index) => {
    const name = `cut ${index + 1} (${cut.x1}, ${cut.y1}) to (${cut.x2}, ${cut.y2})`;
    const runs = direction(cut);
    const parted = runs === undefined ? undefined : part(bench, cut);
    if (runs === undefined || parted === undefined) {
      const message = `${name} does not run from edge to edge of one rectangle`;
      faults.push({ code: 'bad cut', message });
      return;
    }
    if (![1, 2, 3].includes(cut.stage)) {
      faults.push({
        code: 'wrong stage',
        message: `${name} is of stage ${cut.stage}; there are 3`,
      });
    }
    const expected = cut.stage === 2 ? other(firstRuns) : firstRuns;
    if (runs !== expected) {
      const message = `${name} is of stage ${cut.stage} and should run ${expected} the stock`;
      faults.push({ code: 'wrong stage', message });
    }
    // A trim frees one piece; nothing is cut from what it trimmed.
    if (parted.from.stage > cut.stage || parted.from.stage === 3) {
      const message = `${name} is of stage ${cut.stage} in metal of stage ${parted.from.stage}`;
      faults.push({ code: 'wrong stage', message });
    }
    const span = Math.abs(cut.x2 - cut.x1) + Math.abs(cut.y2 - cut.y1);
    if (shear.longestCut !== undefined && span > shear.longestCut) {
      const message = `${name} is ${span} long, the shear cuts at most ${shear.longestCut}`;
      faults.push({ code: 'cut too long', message });
    }
    bench = parted.bench;
  });
  if (shear.firstCut !== 'either' && layout.cuts.length > 0 && firstRuns !== shear.firstCut) {
    const message = `first cuts run ${firstRuns} the stock, the shear is set for ${shear.firstCut}`;
    faults.push({ code: 'wrong stage', message });
  }
  const left = bench.map(place).sort();
  const listed = [...layout.pieces, ...layout.remnants].map(place).sort();
  const odd =
    listed.find((rectangle, i) => rectangle !== left[i]) ??
    left.find((rectangle, i) => rectangle !== listed[i]);
  if (odd !== undefined) {
    const message = `${odd} is listed or cut, but not both`;
    faults.push({ code: 'pieces and remnants differ from what the cuts leave', message });
  }
  return faults;
}

type Runs = 'along' | 'across';

function direction(cut: Cut): Runs | undefined {
  if (cut.y1 === cut.y2 && cut.x1 < cut.x2) return 'along';
  if (cut.x1 === cut.x2 && cut.y1 < cut.y2) return 'across';
  return undefined;
}

function other(runs: Runs): Runs {
  return runs === 'along' ? 'across' : 'along';
}

/** The way the first-stage cuts run, read off whichever cut comes first. */
function firstDirection(cuts: readonly Cut[]): Runs {
  const [first] = cuts;
  const runs = first === undefined ? 'along' : (direction(first) ?? 'along');
  return first?.stage === 2 ? other(runs) : runs;
}

function part(
  bench: readonly Metal[],
  cut: Cut,
): { readonly from: Metal; readonly bench: readonly Metal[] } | undefined {
  const level = cut.y1 === cut.y2;
  const from = bench.find((metal) =>
    level
      ? metal.x === cut.x1 &&
        metal.x + metal.length === cut.x2 &&
        metal.y < cut.y1 &&
        cut.y1 < metal.y + metal.width
      : metal.y === cut.y1 &&
        metal.y + metal.width === cut.y2 &&
        metal.x < cut.x1 &&
        cut.x1 < metal.x + metal.length,
  );
  if (from === undefined) return undefined;
  const { stage } = cut;
  const parts: readonly Metal[] = level
    ? [
        { ...from, width: cut.y1 - from.y, stage },
        { ...from, y: cut.y1, width: from.y + from.width - cut.y1, stage },
      ]
    : [
        { ...from, length: cut.x1 - from.x, stage },
        { ...from, x: cut.x1, length: from.x + from.length - cut.x1, stage },
      ];
  return { from, bench: [...bench.filter((metal) => metal !== from), ...parts] };
}

function place(rectangle: Omit<Metal, 'stage'>): string {
  const { x, y, length, width } = rectangle;
  return `${length} x ${width} at (${x}, ${y})`;
}
