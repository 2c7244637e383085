import type { Pattern } from '../pattern/part.js';
import { type Engines, Master } from '../solvers/engine-choice.js';
import type { LinearColumn, LinearRow } from '../solvers/linear-model.js';
import { classCost, type Measure } from './objective.js';
import type { StockClass } from './stock-class.js';

export interface PatternMasterRequest {
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly measure: Measure;
  /** All that there are to choose from. */
  readonly patterns: readonly Pattern[];
  readonly engines: Engines;
}

/** Whole numbers that a solved master gives. */
export interface PatternAnswer {
  /** `stopped`: there may be a better one. */
  readonly status: 'optimal' | 'stopped';
  /** By the measure, coins kept in sheets taken off. */
  readonly cost: number;
  /** How many sheets to cut by each pattern. */
  readonly counts: readonly number[];
}

/** Sheets of one class beyond which the master would be large. */
const MOST_SHEETS = 100;

/**
 * The integer master over whole patterns that counts money to the coin: for every
 * class, a choice of how many of its sheets are taken, at what so many cost, with
 * those on hand used first, whole packs paid for, and what is left over of them
 * valued. Made for few patterns of few classes.
 * @returns `stopped` where it was too large, or nothing was found in time
 */
export async function solvePatternMaster(
  { classes, demand, measure, patterns, engines }: PatternMasterRequest,
  seconds: number,
): Promise<PatternAnswer | 'infeasible' | 'stopped'> {
  // Every sheet holds a piece that is wanted.
  const wanted = demand.reduce((sum, quantity) => sum + quantity, 0);
  const most = classes.map((entry) =>
    Math.min(
      wanted,
      entry.supplies.reduce((sum, { count }) => sum + count, 0),
    ),
  );
  if (most.some((sheets) => sheets > MOST_SHEETS)) return 'stopped';
  const taken = demand.length;
  const once = taken + classes.length;
  const rows: LinearRow[] = [
    ...demand.map((quantity) => ({ sense: 'at least', bound: quantity }) as const),
    ...classes.map(() => ({ sense: 'at least', bound: 0 }) as const),
    ...classes.map(() => ({ sense: 'at most', bound: 1 }) as const),
  ];
  const cut = patterns.map(
    ({ stockClass, counts, kept }): LinearColumn => ({
      cost: -kept * measure.coin,
      upper: wanted,
      rows: [...counts.map(([piece]) => piece), taken + stockClass],
      coefficients: [...counts.map(([, copies]) => copies), -1],
    }),
  );
  const sheets = classes.flatMap((entry, g) =>
    Array.from(
      { length: most[g] },
      (_, n): LinearColumn => ({
        cost: classCost(entry, n + 1, measure),
        upper: 1,
        rows: [taken + g, once + g],
        coefficients: [n + 1, 1],
      }),
    ),
  );
  const master = new Master(rows, engines);
  try {
    master.add([...cut, ...sheets]);
    const answer = await master.solve({ integer: true, seconds });
    if (answer.status === 'infeasible') return 'infeasible';
    if (answer.status === 'rejected' || answer.values === undefined) return 'stopped';
    const { status, values, objective = Number.NaN } = answer;
    return { status, cost: objective, counts: values.slice(0, patterns.length) };
  } finally {
    master.close();
  }
}
