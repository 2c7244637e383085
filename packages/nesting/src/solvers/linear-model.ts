/**
 * The one interface behind which every solver sits: a linear model goes in,
 * a status with values and row duals comes out. Always minimised; no variable
 * is below 0.
 */

export interface LinearColumn {
  readonly cost: number;
  /** Smallest value, at least 0; 0 when absent. */
  readonly lower?: number;
  /** Largest value, `Infinity` for none. */
  readonly upper: number;
  /** Rows in which the column stands, ascending, each once. */
  readonly rows: readonly number[];
  /** Coefficient in each of those rows. */
  readonly coefficients: readonly number[];
}

export interface LinearRow {
  readonly sense: 'at least' | 'at most' | 'exactly';
  readonly bound: number;
}

export interface LinearModel {
  readonly rows: readonly LinearRow[];
  readonly columns: readonly LinearColumn[];
}

export interface SolveLimits {
  /** True asks for whole numbers in every column. */
  readonly integer: boolean;
  /** Wall seconds after which the engine stops by itself. */
  readonly seconds: number;
  /** Nodes of branching after which it stops; no limit when absent. */
  readonly nodes?: number;
  /** A whole-number answer that may be above the best by this share is good enough; 0 when absent. */
  readonly gap?: number;
  /**
   * Whole-number answers that cost more are of no use, so that an engine may call a
   * model without a better one infeasible, though it need not. None when absent.
   */
  readonly cutoff?: number;
  /**
   * Asked now and then while the engine solves; true stops it, with the best values
   * so far. An engine that cannot be interrupted need not ask.
   */
  readonly stop?: () => boolean;
}

export type Answer =
  | {
      readonly status: 'optimal';
      readonly objective: number;
      /** One value for each column. */
      readonly values: readonly number[];
      /**
       * One for each row: by how much the objective rises with the row's bound.
       * At least 0 for `at least` rows, at most 0 for `at most` rows, of any sign for
       * `exactly`. Empty for integer solves.
       */
      readonly duals: readonly number[];
    }
  | { readonly status: 'infeasible' }
  /** Stopped at a limit, with the best values found if there are any. */
  | {
      readonly status: 'stopped';
      readonly objective?: number;
      readonly values?: readonly number[];
    };

/** A model held by an engine, so that a solve can start from the last one. */
export interface Session {
  /** Adds rows behind those already there; columns added later may stand in them. */
  addRows(rows: readonly LinearRow[]): void;
  /** Adds columns behind those already there. */
  add(columns: readonly LinearColumn[]): void;
  /** Changes the bound of a row. */
  setRow(row: number, bound: number): void;
  /** Changes the bounds of a column. */
  setColumn(column: number, lower: number, upper: number): void;
  solve(limits: SolveLimits): Answer;
  /** Frees what the engine holds; the session is not used after it. */
  close(): void;
}

export interface Engine {
  readonly name: string;
  open(rows: readonly LinearRow[]): Session;
}
