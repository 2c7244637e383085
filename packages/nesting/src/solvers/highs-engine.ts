import highsModule, { type Highs, type HighsCallbackMap } from 'highs';
import type {
  Answer,
  Engine,
  LinearColumn,
  LinearRow,
  Session,
  SolveLimits,
} from './linear-model.js';

// The package's types describe its CommonJS build, where the loader is the
// module's `default`; the ES module that runs exports the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default;

let loading: Promise<Highs> | undefined;

/**
 * The HiGHS solver as WebAssembly, loaded once.
 * @throws whatever the WebAssembly runtime throws where it cannot run.
 */
export async function loadHighsEngine(): Promise<Engine> {
  if (loading === undefined) loading = loadHighs();
  const highs = await loading;
  return { name: 'HiGHS', open: (rows) => openSession(highs, rows) };
}

function openSession(highs: Highs, rows: readonly LinearRow[]): Session {
  const lowerOf = (row: LinearRow) => (row.sense === 'at most' ? -highs.infinity : row.bound);
  const upperOf = (row: LinearRow) => (row.sense === 'at least' ? highs.infinity : row.bound);
  const senses = rows.map((row) => row.sense);
  const model = highs.createModel({
    numCols: 0,
    numRows: rows.length,
    colCost: [],
    colLower: [],
    colUpper: [],
    rowLower: rows.map(lowerOf),
    rowUpper: rows.map(upperOf),
    matrix: {
      format: 'csc',
      numRows: rows.length,
      numCols: 0,
      starts: [0],
      indices: [],
      values: [],
    },
  });
  // A gap of 0: the caller compares costs exactly, so "nearly best" is no answer.
  model.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-9, random_seed: 1 });
  let columns = 0;
  let integral = 0;

  function addRows(added: readonly LinearRow[]): void {
    if (added.length === 0) return;
    model.addRows({
      lower: Float64Array.from(added, lowerOf),
      upper: Float64Array.from(added, upperOf),
      matrix: {
        format: 'csr',
        numRows: added.length,
        numCols: columns,
        starts: new Int32Array(added.length + 1),
        indices: new Int32Array(0),
        values: new Float64Array(0),
      },
    });
    senses.push(...added.map((row) => row.sense));
  }

  function setRow(row: number, bound: number): void {
    const changed = { sense: senses[row], bound };
    model.changeRowBounds(row, lowerOf(changed), upperOf(changed));
  }

  function setColumn(column: number, lower: number, upper: number): void {
    model.changeColBounds(column, lower, Number.isFinite(upper) ? upper : highs.infinity);
  }

  function add(added: readonly LinearColumn[]): void {
    if (added.length === 0) return;
    const starts = [0];
    const indices: number[] = [];
    const values: number[] = [];
    for (const column of added) {
      indices.push(...column.rows);
      values.push(...column.coefficients);
      starts.push(indices.length);
    }
    model.addCols({
      cost: Float64Array.from(added, (column) => column.cost),
      lower: Float64Array.from(added, (column) => column.lower ?? 0),
      upper: Float64Array.from(added, (column) =>
        Number.isFinite(column.upper) ? column.upper : highs.infinity,
      ),
      matrix: {
        format: 'csc',
        numRows: senses.length,
        numCols: added.length,
        starts: Int32Array.from(starts),
        indices: Int32Array.from(indices),
        values: Float64Array.from(values),
      },
    });
    columns += added.length;
  }

  function solve(limits: SolveLimits): Answer {
    const type = highs.constants.variableType;
    const wanted = limits.integer ? columns : 0;
    if (wanted !== integral && columns > 0) {
      model.changeColsIntegrality(
        { kind: 'range', from: 0, to: columns - 1 },
        new Array(columns).fill(limits.integer ? type.integer : type.continuous),
      );
      integral = wanted;
    }
    // The clock of a persistent model runs on from solve to solve.
    model.options.set('time_limit', model.getRunTime() + Math.max(0.01, limits.seconds));
    model.options.set({
      mip_max_nodes: limits.nodes ?? 2_147_483_647,
      mip_rel_gap: limits.gap ?? 0,
      objective_bound: limits.cutoff ?? 1e30,
    });
    try {
      model.run(interruptions(highs, limits.stop));
    } catch {
      // Numbers too far apart make it give up; whoever asked goes on without an answer.
      return { status: 'stopped' };
    }
    const status = model.getModelStatus();
    const codes = highs.constants.modelStatus;
    if (status === codes.infeasible || status === codes.unboundedOrInfeasible) {
      return { status: 'infeasible' };
    }
    if (status === codes.optimal) {
      // An answer above the cutoff need not be the best there is.
      if (model.getObjectiveValue() > (limits.cutoff ?? Number.POSITIVE_INFINITY)) {
        return { status: 'infeasible' };
      }
      const solution = model.getSolution();
      return {
        status: 'optimal',
        objective: model.getObjectiveValue(),
        values: Array.from(solution.colValue),
        duals: limits.integer ? [] : Array.from(solution.rowDual),
      };
    }
    // 2 is HiGHS's code for "a feasible point is available".
    if (model.info.get('primal_solution_status') === 2) {
      return {
        status: 'stopped',
        objective: model.getObjectiveValue(),
        values: Array.from(model.getSolution().colValue),
      };
    }
    return { status: 'stopped' };
  }

  return { addRows, add, setRow, setColumn, solve, close: () => model.dispose() };
}

/** Lets HiGHS ask at its checkpoints whether to go on. Some of its heuristics take seconds between two. */
function interruptions(highs: Highs, stop: SolveLimits['stop']): HighsCallbackMap | undefined {
  if (stop === undefined) return undefined;
  const { mipInterrupt, simplexInterrupt } = highs.constants.callbackType;
  const ask = (event: { interrupt(): void }): undefined => {
    if (stop()) event.interrupt();
  };
  return { [mipInterrupt]: ask, [simplexInterrupt]: ask };
}
