import { type Engines, Master } from '../solvers/engine-choice.js';
import type { LinearColumn, LinearRow } from '../solvers/linear-model.js';
import type { StockClass } from '../stock-classes.js';
import { type MasterRows, masterRows, supplyColumns } from './linear-master.js';
import type { Objective } from './objective.js';
import type { SheetPattern, StripPattern } from './patterns.js';
import type { Faces } from './strip-families.js';

/** Whole numbers of sheet patterns and of the strips cut from them. */
export interface IntegerPlan {
  /** By the objective it was made for. */
  readonly cost: number;
  readonly sheets: readonly (readonly [SheetPattern, number])[];
  readonly strips: readonly (readonly [StripPattern, number])[];
}

/** How many sheets of each class a plan cuts. */
export function sheetsUsed(
  plan: Pick<IntegerPlan, 'sheets'>,
  faces: Faces,
  classes: number,
): readonly number[] {
  const used: number[] = new Array(classes).fill(0);
  for (const [sheet, count] of plan.sheets) used[faces.faces[sheet.face].stockClass] += count;
  return used;
}

export interface IntegerRequest {
  readonly faces: Faces;
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly objective: Objective;
  readonly strips: readonly StripPattern[];
  readonly sheets: readonly SheetPattern[];
  /** Only a plan that costs at most this is of use. */
  readonly atMost: number;
  readonly seconds: number;
  readonly engines: Engines;
}

export type IntegerResult =
  | { readonly status: 'best'; readonly plan: IntegerPlan }
  | { readonly status: 'found'; readonly plan: IntegerPlan }
  /** These patterns make no plan that costs at most what was asked. */
  | { readonly status: 'none' }
  | { readonly status: 'stopped' };

/**
 * The integer master on two levels: sheet patterns give strips of each width,
 * strip patterns use them. Any strips of one width can go into any sheet that
 * has room for them, so a few patterns of each level make many plans.
 */
export async function solveIntegerMaster(request: IntegerRequest): Promise<IntegerResult> {
  const { faces, classes, demand, objective } = request;
  const base = masterRows(demand, classes, objective);
  const supplies = supplyColumns(base, classes, objective);
  const stripRow = new Map<string, number>();
  const rows: LinearRow[] = [...base.rows];
  const rowOf = (family: number, width: number): number => {
    const key = `${family} ${width}`;
    const known = stripRow.get(key);
    if (known !== undefined) return known;
    rows.push({ sense: 'at least', bound: 0 });
    stripRow.set(key, rows.length - 1);
    return rows.length - 1;
  };
  const strips = request.strips.map((strip) => stripColumn(faces, strip, rowOf));
  const sheets = request.sheets.map((sheet) => sheetColumn(base, faces, sheet, rowOf));
  const limited = Number.isFinite(request.atMost)
    ? withCostRow(rows, supplies, request.atMost)
    : supplies;
  const master = new Master(rows, request.engines);
  try {
    master.add([...limited, ...strips, ...sheets]);
    const answer = await master.solve({ integer: true, seconds: request.seconds });
    if (answer.status === 'infeasible') return { status: 'none' };
    if (answer.status === 'rejected' || answer.values === undefined) return { status: 'stopped' };
    const values = answer.values.slice(supplies.length);
    const plan: IntegerPlan = {
      cost: supplies.reduce((sum, column, t) => sum + column.cost * (answer.values?.[t] ?? 0), 0),
      strips: counted(request.strips, values),
      sheets: counted(request.sheets, values.slice(strips.length)),
    };
    return { status: answer.status === 'optimal' ? 'best' : 'found', plan };
  } finally {
    master.close();
  }
}

function stripColumn(
  faces: Faces,
  strip: StripPattern,
  rowOf: (family: number, width: number) => number,
): LinearColumn {
  const { lays } = faces.families[strip.family];
  const counts = new Map<number, number>();
  for (const [lay, copies] of strip.lays) {
    counts.set(lays[lay].piece, (counts.get(lays[lay].piece) ?? 0) + copies);
  }
  const entries = [...counts].sort((a, b) => a[0] - b[0]);
  return {
    cost: 0,
    upper: Number.POSITIVE_INFINITY,
    rows: [...entries.map(([piece]) => piece), rowOf(strip.family, strip.width)],
    coefficients: [...entries.map(([, count]) => count), -1],
  };
}

function sheetColumn(
  base: MasterRows,
  faces: Faces,
  sheet: SheetPattern,
  rowOf: (family: number, width: number) => number,
): LinearColumn {
  const face = faces.faces[sheet.face];
  const entries = sheet.widths
    .map(([width, count]) => [rowOf(face.family, width), count] as const)
    .sort((a, b) => a[0] - b[0]);
  return {
    cost: 0,
    upper: Number.POSITIVE_INFINITY,
    rows: [base.firstClass + face.stockClass, ...entries.map(([row]) => row)],
    coefficients: [-1, ...entries.map(([, count]) => count)],
  };
}

function withCostRow(
  rows: LinearRow[],
  supplies: readonly LinearColumn[],
  atMost: number,
): readonly LinearColumn[] {
  rows.push({ sense: 'at most', bound: atMost });
  return supplies.map((column) =>
    column.cost === 0
      ? column
      : {
          ...column,
          rows: [...column.rows, rows.length - 1],
          coefficients: [...column.coefficients, column.cost],
        },
  );
}

function counted<T>(items: readonly T[], values: readonly number[]): (readonly [T, number])[] {
  return items.flatMap((item, i) => (values[i] > 0 ? [[item, values[i]] as const] : []));
}
