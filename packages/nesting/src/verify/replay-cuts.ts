import type { Cut, Layout } from '../plan.js';
import type { Rolling, Shear, Stock } from '../problem.js';
import { type Bench, type BenchMetal, benchWith } from './bench.js';
import type { LayoutFault } from './plan-fault.js';
import { trimStock } from './trim-faults.js';

/**
 * Makes the cuts of a layout one by one on an imagined stock. Each must run from
 * edge to edge of one rectangle that lies on the bench, be of a stage that this
 * rectangle still allows, run the way its stage runs, and be within the shear's
 * limits; its kerf is taken away as dust. What lies there in the end must be the
 * pieces and the remnants, so that none overlaps another or the stock's edge.
 */
export function replayCuts(layout: Layout, stock: Stock, shear: Shear): readonly LayoutFault[] {
  const trimmed = trimStock(layout.cuts, stock, shear);
  const faults = [...trimmed.faults];
  const bench = benchWith(trimmed.left);
  const pieces = new Set(layout.pieces.map(place));
  const stages = shear.stages ?? 2;
  const lastTrim = stages === 'free' ? Number.POSITIVE_INFINITY : stages + 1;
  const cuts = layout.cuts.slice(trimmed.cuts);
  const firstRuns = firstDirection(cuts);
  layout.cuts.forEach((cut, index) => {
    const name = `cut ${index + 1} (${cut.x1}, ${cut.y1}) to (${cut.x2}, ${cut.y2})`;
    const fault = (code: LayoutFault['code'], message: string) =>
      faults.push({ code, message: `${name} ${message}` });

    const span = Math.abs(cut.x2 - cut.x1) + Math.abs(cut.y2 - cut.y1);
    if (shear.longestCut !== undefined && !(span <= shear.longestCut)) {
      fault('cut too long', `is ${span} long, the shear cuts at most ${shear.longestCut}`);
    }
    if (index < trimmed.cuts) return;
    const runs = direction(cut);
    const metal = runs === undefined ? undefined : bench.dividedBy(cut);
    if (runs === undefined || metal === undefined) {
      fault('bad cut', 'does not run from edge to edge of one rectangle');
      return;
    }
    const stageFault = ofStage(cut.stage, metal.stage, lastTrim);
    if (stageFault !== undefined) fault('wrong stage', stageFault);
    const expected = cut.stage % 2 === 0 ? other(firstRuns) : firstRuns;
    if (runs !== expected) {
      const message = `is of stage ${cut.stage} and should run ${expected} the stock, not ${runs}`;
      fault('wrong stage', message);
    }
    const parts = part(bench, metal, cut, shear.kerf ?? 0);
    const narrowest = shear.narrowestStrip ?? 0;
    for (const { length, width } of parts) {
      const extent = runs === 'along' ? width : length;
      if (extent >= narrowest) continue;
      fault('strip too narrow', `parts ${extent}, the shear holds at least ${narrowest}`);
    }
    const freed = parts.filter((metal) => pieces.has(place(metal))).length;
    if (cut.stage === lastTrim && freed > 1) {
      fault('wrong stage', `is the last trim and frees ${freed} pieces instead of 1`);
    }
  });
  if (shear.firstCut !== 'either' && cuts.length > 0 && firstRuns !== shear.firstCut) {
    const message = `first cuts run ${firstRuns} the stock, the shear is set for ${shear.firstCut}`;
    faults.push({ code: 'wrong first direction', message });
  }
  return [...faults, ...differences(layout, bench.all())];
}

/**
 * What is wrong with a cut of one stage in metal freed at another. A stage that
 * has nothing to cut is skipped, but free cutting counts changes of direction
 * and skips none (save a first one: the pattern may be one strip).
 */
function ofStage(stage: number, metal: number, lastTrim: number): string | undefined {
  if (!Number.isInteger(stage) || stage < 1) {
    return `is of stage ${stage}; stages after the trim of the edges count from 1`;
  }
  if (stage > lastTrim) return `is of stage ${stage}; there are ${lastTrim}`;
  if (stage < metal) return `is of stage ${stage} in metal of stage ${metal}`;
  if (metal === lastTrim) return `cuts what the last trim (stage ${metal}) has trimmed`;
  const next = Math.max(metal + 1, 2);
  if (lastTrim === Number.POSITIVE_INFINITY && stage > next) {
    return `is of stage ${stage} in metal of stage ${metal}; the next there is ${next}`;
  }
  return undefined;
}

function direction(cut: Cut): Rolling | undefined {
  if (cut.y1 === cut.y2 && cut.x1 < cut.x2) return 'along';
  if (cut.x1 === cut.x2 && cut.y1 < cut.y2) return 'across';
  return undefined;
}

function other(runs: Rolling): Rolling {
  return runs === 'along' ? 'across' : 'along';
}

/** The way the first-stage cuts run, read off whichever cut comes first. */
function firstDirection(cuts: readonly Cut[]): Rolling {
  const [first] = cuts;
  const runs = first === undefined ? 'along' : (direction(first) ?? 'along');
  return first !== undefined && first.stage % 2 === 0 ? other(runs) : runs;
}

/** Cuts on the bench; the part beyond the line is absent where the kerf takes all of it. */
function part(bench: Bench, metal: BenchMetal, cut: Cut, kerf: number): readonly BenchMetal[] {
  const { stage } = cut;
  const { x, y, length, width } = metal;
  const [near, far]: readonly BenchMetal[] =
    cut.y1 === cut.y2
      ? [
          { x, y, length, width: cut.y1 - y, stage },
          { x, y: cut.y1 + kerf, length, width: y + width - cut.y1 - kerf, stage },
        ]
      : [
          { x, y, length: cut.x1 - x, width, stage },
          { x: cut.x1 + kerf, y, length: x + length - cut.x1 - kerf, width, stage },
        ];
  const parts = far.length > 0 && far.width > 0 ? [near, far] : [near];
  bench.replace(metal, parts);
  return parts;
}

function differences(layout: Layout, left: readonly BenchMetal[]): readonly LayoutFault[] {
  const listed = [...layout.pieces, ...layout.remnants].map(place);
  const cut = left.map(place);
  const faults: LayoutFault[] = [];
  const odd = (text: string) =>
    faults.push({ code: 'pieces and remnants differ from what the cuts leave', message: text });
  const [notCut, cutCount] = [without(listed, cut), cut.length];
  const notListed = without(cut, listed);
  if (notCut.length > 0) {
    odd(`${notCut[0]} is listed, but none of the ${cutCount} parts that the cuts leave`);
  }
  if (notListed.length > 0) {
    odd(`${notListed[0]} is left by the cuts, but none of the ${listed.length} listed`);
  }
  return faults;
}

/** Those of a list that another does not hold as often. */
function without(items: readonly string[], others: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const item of others) counts.set(item, (counts.get(item) ?? 0) + 1);
  return items.filter((item) => {
    const count = counts.get(item) ?? 0;
    counts.set(item, count - 1);
    return count <= 0;
  });
}

function place(rectangle: Omit<BenchMetal, 'stage'>): string {
  const { x, y, length, width } = rectangle;
  return `${length} x ${width} at (${x}, ${y})`;
}
