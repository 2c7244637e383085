import { type CheckedAnswer, checkAnswer } from './check-answer.js';
import { loadHighsEngine } from './highs-engine.js';
import { javascriptEngine } from './javascript-engine.js';
import type { Engine, LinearColumn, LinearRow, Session, SolveLimits } from './linear-model.js';

/**
 * Up to this size the JavaScript engine answers sooner than HiGHS. Measured on
 * 160 random covering problems of 3 x 8 to 30 x 120 (rows x columns): integer
 * solves took it 1 to 21 ms up to 12 x 40 against 13 to 40 ms of HiGHS, and
 * were about twice as slow from 15 x 60 on; linear solves were even up to
 * 20 x 80. It also needs no WebAssembly to be compiled first.
 */
const SMALL_ROWS = 12;
const SMALL_COLUMNS = 40;

/**
 * Above this the JavaScript engine is not asked even where HiGHS has no answer: from
 * 20 x 80 on, half of such problems ran on without end, and it cannot be stopped.
 */
const MOST_ROWS = 20;
const MOST_COLUMNS = 80;

/** Seconds a small master may take in the JavaScript engine before HiGHS has its turn. */
const SMALL_SECONDS = 0.25;

/** Picks engines: one that starts at once, and one for everything it cannot do. */
export interface Engines {
  readonly small: Engine;
  /** Undefined where it cannot run, so that `small` must do all. */
  readonly large: () => Promise<Engine | undefined>;
}

/** javascript-lp-solver for small masters, HiGHS for the rest. */
export const standardEngines: Engines = {
  small: javascriptEngine,
  large: () => loadHighsEngine().catch(() => undefined),
};

/**
 * A master that is solved by whichever engine suits its size, never believed:
 * every answer is recomputed, and a wrong or unfinished one from the small
 * engine is put to the large one.
 */
export class Master {
  readonly #rows: LinearRow[];
  readonly #columns: LinearColumn[] = [];
  readonly #engines: Engines;
  readonly #small: Session;
  #large: Session | undefined;
  #inLarge = 0;
  /** Answers that did not stand up to recomputing. */
  rejected = 0;

  constructor(rows: readonly LinearRow[], engines: Engines) {
    this.#rows = [...rows];
    this.#engines = engines;
    this.#small = engines.small.open(rows);
  }

  get columns(): number {
    return this.#columns.length;
  }

  addRows(rows: readonly LinearRow[]): void {
    if (rows.length === 0) return;
    this.#bringUp();
    this.#rows.push(...rows);
    this.#small.addRows(rows);
    this.#large?.addRows(rows);
  }

  add(columns: readonly LinearColumn[]): void {
    this.#columns.push(...columns);
    this.#small.add(columns);
  }

  setRow(row: number, bound: number): void {
    if (this.#rows[row].bound === bound) return;
    this.#rows[row] = { ...this.#rows[row], bound };
    this.#small.setRow(row, bound);
    this.#large?.setRow(row, bound);
  }

  setColumn(column: number, lower: number, upper: number): void {
    const { lower: before = 0, upper: above } = this.#columns[column];
    if (before === lower && above === upper) return;
    this.#bringUp();
    this.#columns[column] = { ...this.#columns[column], lower, upper };
    this.#small.setColumn(column, lower, upper);
    this.#large?.setColumn(column, lower, upper);
  }

  async solve(limits: SolveLimits): Promise<CheckedAnswer> {
    if (this.#rows.length <= SMALL_ROWS && this.#columns.length <= SMALL_COLUMNS) {
      const seconds = Math.min(limits.seconds, SMALL_SECONDS);
      const answer = this.#checked(this.#small, { ...limits, seconds });
      if (answer?.status === 'optimal') return answer;
    }
    const large = await this.#openLarge();
    const answer = this.#checked(large, limits);
    if (answer !== undefined) return answer;
    if (this.#rows.length > MOST_ROWS || this.#columns.length > MOST_COLUMNS) {
      return { status: 'stopped' };
    }
    return this.#checked(this.#small, limits) ?? { status: 'stopped' };
  }

  close(): void {
    this.#small.close();
    this.#large?.close();
  }

  async #openLarge(): Promise<Session | undefined> {
    this.#large ??= (await this.#engines.large())?.open(this.#rows);
    this.#bringUp();
    return this.#large;
  }

  /** The large engine gets its columns when they are needed, many at a time. */
  #bringUp(): void {
    if (this.#large === undefined || this.#inLarge === this.#columns.length) return;
    this.#large.add(this.#columns.slice(this.#inLarge));
    this.#inLarge = this.#columns.length;
  }

  #checked(session: Session | undefined, limits: SolveLimits): CheckedAnswer | undefined {
    if (session === undefined) return undefined;
    const model = { rows: this.#rows, columns: this.#columns };
    const answer = checkAnswer(model, session.solve(limits), limits.integer);
    if (answer.status !== 'rejected') return answer;
    this.rejected++;
    return undefined;
  }
}
