import type { LinearColumn, LinearRow } from '../solvers/linear-model.js';
import type { StockClass } from '../stock-classes.js';
import type { Objective } from './objective.js';
import type { CutPattern } from './patterns.js';
import type { Faces } from './strip-families.js';

/**
 * The rows that both masters share: one for each piece (its demand), one for
 * each class of stock (sheets cut are at most sheets taken), and one for the
 * budget where the objective has one.
 */
export interface MasterRows {
  readonly rows: readonly LinearRow[];
  /** Row of the first class. */
  readonly firstClass: number;
  /** Row of the budget, if there is one. */
  readonly budget: number | undefined;
}

export function masterRows(
  demand: readonly number[],
  classes: readonly StockClass[],
  objective: Objective,
): MasterRows {
  const rows: LinearRow[] = [
    ...demand.map((quantity) => ({ sense: 'at least', bound: quantity }) as const),
    ...classes.map(() => ({ sense: 'at least', bound: 0 }) as const),
  ];
  if (objective.budget !== undefined) rows.push({ sense: 'at most', bound: objective.budget });
  return {
    rows,
    firstClass: demand.length,
    budget: objective.budget === undefined ? undefined : rows.length - 1,
  };
}

/** One column for each supply: taking one sheet of it. */
export function supplyColumns(
  rows: MasterRows,
  classes: readonly StockClass[],
  objective: Objective,
): readonly LinearColumn[] {
  return classes.flatMap((entry, g) =>
    entry.supplies.map((supply): LinearColumn => {
      const priced = rows.budget !== undefined && supply.price > 0;
      return {
        cost: objective.cost(supply),
        lower: supply.least,
        upper: supply.count,
        rows: priced ? [rows.firstClass + g, rows.budget ?? 0] : [rows.firstClass + g],
        coefficients: priced ? [1, supply.price] : [1],
      };
    }),
  );
}

/** Going without one piece, at a cost that no plan would pay. */
export function shortageColumns(penalties: readonly number[]): readonly LinearColumn[] {
  return penalties.map((penalty, piece) => ({
    cost: penalty,
    upper: Number.POSITIVE_INFINITY,
    rows: [piece],
    coefficients: [1],
  }));
}

/** Cutting one sheet by a pattern. */
export function patternColumn(rows: MasterRows, faces: Faces, cut: CutPattern): LinearColumn {
  const counts = pieceCounts(faces, cut);
  const pieces = [...counts.keys()].sort((a, b) => a - b);
  return {
    cost: 0,
    upper: Number.POSITIVE_INFINITY,
    rows: [...pieces, rows.firstClass + faces.faces[cut.face].stockClass],
    coefficients: [...pieces.map((piece) => counts.get(piece) ?? 0), -1],
  };
}

/** Pieces that one sheet gives when cut by the pattern, by index. */
export function pieceCounts(faces: Faces, cut: CutPattern): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  const family = faces.families[faces.faces[cut.face].family];
  for (const [strip, strips] of cut.strips) {
    for (const [lay, copies] of strip.lays) {
      const { piece } = family.lays[lay];
      counts.set(piece, (counts.get(piece) ?? 0) + copies * strips);
    }
  }
  return counts;
}
