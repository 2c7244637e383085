import solverModule from 'javascript-lp-solver';
import type {
  Answer,
  Engine,
  LinearColumn,
  LinearRow,
  Session,
  SolveLimits,
} from './linear-model.js';

// The package's types describe its CommonJS build, where the solver is the
// module's `default`; the ES module that runs exports the solver itself.
const solver = solverModule as unknown as typeof solverModule.default;

type TextModel = Parameters<typeof solver.Solve>[0];

/** What its models call the bound of a row. */
const BOUNDS = { 'at least': 'min', 'at most': 'max', exactly: 'equal' } as const;

/**
 * The pure JavaScript solver: it starts at once and runs everywhere. It gives
 * no duals, so those of a linear solve come from solving the dual model.
 */
export const javascriptEngine: Engine = {
  name: 'javascript-lp-solver',
  open: (rows) => openSession(rows),
};

function openSession(opened: readonly LinearRow[]): Session {
  const rows = [...opened];
  const columns: LinearColumn[] = [];

  function solve(limits: SolveLimits): Answer {
    const primal = runModel(primalModel(rows, columns, limits));
    if (!primal.feasible) return { status: 'infeasible' };
    const values = columns.map((_, index) => numberAt(primal, `c${index}`));
    if (limits.integer) {
      // At its time limit it may flag an answer feasible that is not integral;
      // whoever reads the answer recomputes it.
      return { status: 'optimal', objective: primal.result, values, duals: [] };
    }
    const dual = runModel(dualModel(rows, columns, limits));
    if (!dual.feasible) return { status: 'stopped', objective: primal.result, values };
    const duals = rows.map((_, index) => numberAt(dual, `r${index}`) - numberAt(dual, `n${index}`));
    return { status: 'optimal', objective: primal.result, values, duals };
  }

  return {
    addRows: (added) => void rows.push(...added),
    add: (added) => void columns.push(...added),
    setRow: (row, bound) => {
      rows[row] = { ...rows[row], bound };
    },
    setColumn: (column, lower, upper) => {
      columns[column] = { ...columns[column], lower, upper };
    },
    solve,
    close: () => undefined,
  };
}

function primalModel(
  rows: readonly LinearRow[],
  columns: readonly LinearColumn[],
  limits: SolveLimits,
): TextModel {
  const constraints: Record<string, { min?: number; max?: number; equal?: number }> = {};
  rows.forEach(({ sense, bound }, index) => {
    constraints[`r${index}`] = { [BOUNDS[sense]]: bound };
  });
  const variables: Record<string, Record<string, number>> = {};
  const ints: Record<string, 1> = {};
  columns.forEach((column, index) => {
    const entries: Record<string, number> = { cost: column.cost };
    column.rows.forEach((row, k) => {
      entries[`r${row}`] = column.coefficients[k];
    });
    if (Number.isFinite(column.upper)) {
      entries[`u${index}`] = 1;
      constraints[`u${index}`] = { max: column.upper };
    }
    if (column.lower !== undefined && column.lower > 0) {
      entries[`l${index}`] = 1;
      constraints[`l${index}`] = { min: column.lower };
    }
    variables[`c${index}`] = entries;
    if (limits.integer) ints[`c${index}`] = 1;
  });
  return {
    optimize: 'cost',
    opType: 'min',
    constraints,
    variables,
    ints,
    options: { timeout: limits.seconds * 1000 },
  };
}

/**
 * max b'y: variables for each row and each bound, a constraint for each column. What a row's
 * multiplier is above 0 is `r`, what it is below is `n`; a row of one sense has only one of them.
 */
function dualModel(
  rows: readonly LinearRow[],
  columns: readonly LinearColumn[],
  limits: SolveLimits,
): TextModel {
  const constraints: Record<string, { max: number }> = {};
  const variables: Record<string, Record<string, number>> = {};
  rows.forEach(({ sense, bound }, index) => {
    if (sense !== 'at most') variables[`r${index}`] = { gain: bound };
    if (sense !== 'at least') variables[`n${index}`] = { gain: -bound };
  });
  columns.forEach((column, index) => {
    constraints[`c${index}`] = { max: column.cost };
    column.rows.forEach((row, k) => {
      const { sense } = rows[row];
      if (sense !== 'at most') variables[`r${row}`][`c${index}`] = column.coefficients[k];
      if (sense !== 'at least') variables[`n${row}`][`c${index}`] = -column.coefficients[k];
    });
    if (Number.isFinite(column.upper)) {
      variables[`u${index}`] = { gain: -column.upper, [`c${index}`]: -1 };
    }
    if (column.lower !== undefined && column.lower > 0) {
      variables[`l${index}`] = { gain: column.lower, [`c${index}`]: 1 };
    }
  });
  return {
    optimize: 'gain',
    opType: 'max',
    constraints,
    variables,
    options: { timeout: limits.seconds * 1000 },
  };
}

function runModel(model: TextModel): {
  feasible: boolean;
  result: number;
  [name: string]: unknown;
} {
  const result: unknown = solver.Solve(model);
  if (typeof result !== 'object' || result === null) return { feasible: false, result: 0 };
  const { feasible, result: objective, ...rest } = result as Record<string, unknown>;
  return { ...rest, feasible: feasible === true, result: Number(objective) };
}

function numberAt(result: Readonly<Record<string, unknown>>, name: string): number {
  const value = result[name];
  return typeof value === 'number' ? value : 0;
}
