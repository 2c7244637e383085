import type { Cut } from '../plan.js';
import type { Shear, Stock } from '../problem.js';
import type { BenchMetal } from './bench.js';
import type { LayoutFault } from './plan-fault.js';

/** What is left of a stock when its edges are trimmed, and how many cuts that took. */
export interface TrimmedStock {
  readonly left: BenchMetal;
  readonly cuts: number;
  readonly faults: readonly LayoutFault[];
}

/**
 * Checks that the first four cuts trim the edges of a sheet: left, right, bottom,
 * top. The blade's dust lies within what is trimmed off. Offcuts, and sheets
 * under a shear without trim, have none of these cuts.
 */
export function trimStock(cuts: readonly Cut[], stock: Stock, shear: Shear): TrimmedStock {
  const trim = stock.kind === 'sheet' ? (shear.trim ?? 0) : 0;
  const left = {
    x: trim,
    y: trim,
    length: stock.length - 2 * trim,
    width: stock.width - 2 * trim,
    stage: 0,
  };
  const right = stock.length - trim;
  const top = stock.width - trim;
  const near = trim - (shear.kerf ?? 0);
  const expected: readonly Cut[] =
    trim === 0
      ? []
      : [
          { stage: 0, x1: near, y1: 0, x2: near, y2: stock.width },
          { stage: 0, x1: right, y1: 0, x2: right, y2: stock.width },
          { stage: 0, x1: trim, y1: near, x2: right, y2: near },
          { stage: 0, x1: trim, y1: top, x2: right, y2: top },
        ];
  const first = cuts.findIndex((cut) => cut.stage !== 0);
  const made = cuts.slice(0, first < 0 ? cuts.length : first);
  const faults: LayoutFault[] = [];
  for (let i = 0; i < Math.max(made.length, expected.length); i++) {
    const [is, should] = [inWords(made[i]), inWords(expected[i])];
    if (is === should) continue;
    const message = `trim ${i + 1} should be ${should}, listed ${is}`;
    faults.push({ code: 'edges not trimmed', message });
  }
  return { left, cuts: made.length, faults };
}

function inWords(cut: Cut | undefined): string {
  return cut === undefined ? 'none' : `(${cut.x1}, ${cut.y1}) to (${cut.x2}, ${cut.y2})`;
}
