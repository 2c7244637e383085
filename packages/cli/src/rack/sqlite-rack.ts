import type {
  Booked,
  Correction,
  LayoutTimes,
  MergeLine,
  MergeResult,
  NewStock,
  PlannedCutting,
  Rack,
  RackEvent,
  RackFilter,
  RackJob,
  RackStock,
  RackWorth,
  ShopKeepRule,
} from './rack.js';
import { RackError } from './rack-error.js';
import { bookPlan } from './store/book-plan.js';
import { addStock, correctStock, mergeStock, removeStock } from './store/edit-stock.js';
import { eventsOf } from './store/events.js';
import { holdPlan, letPlanGo, receivePlan } from './store/hold-plan.js';
import { allJobs } from './store/jobs.js';
import { keepRulesOf, setKeepRuleOf } from './store/keep-rules.js';
import { Ledger } from './store/ledger.js';
import type { Connection } from './store/rack-file.js';
import { listStock, toStock } from './store/stock-rows.js';
import { errorCode, tellingErrors } from './store/told-errors.js';
import { undoBooking } from './store/undo-booking.js';
import { worthOf } from './store/worth.js';

/** How often a change that another program stands in the way of is tried. */
const TRIES = 50;
/** Milliseconds between two tries. */
const PAUSE = 20;

/** A rack kept as an SQLite file. Each method is one transaction. */
export class SqliteRack implements Rack {
  readonly #connection: Connection;
  readonly #path: string;
  readonly #ledger: Ledger;

  constructor(connection: Connection, path: string, now: () => string) {
    this.#connection = connection;
    this.#path = path;
    this.#ledger = new Ledger(connection, now);
  }

  get id(): string {
    return this.#read(() => this.#head().id);
  }

  get revision(): number {
    return this.#read(() => this.#head().revision);
  }

  list(filter: RackFilter = {}): readonly RackStock[] {
    return this.#read(() => listStock(this.#connection, filter));
  }

  find(mark: string): RackStock | undefined {
    const row = this.#read(() => this.#ledger.rowOf(mark));
    return row === undefined ? undefined : toStock(row);
  }

  history(mark: string): readonly RackEvent[] {
    return this.#read(() => eventsOf(this.#ledger, mark));
  }

  jobs(): readonly RackJob[] {
    return this.#read(() => allJobs(this.#ledger));
  }

  worth(): RackWorth {
    return this.#read(() => worthOf(this.#connection));
  }

  keepRules(): readonly ShopKeepRule[] {
    return this.#read(() => keepRulesOf(this.#connection));
  }

  add(stock: readonly NewStock[]): readonly string[] {
    return this.#change(() => addStock(this.#ledger, stock));
  }

  correct(mark: string, correction: Correction): RackStock {
    return this.#change(() => correctStock(this.#ledger, mark, correction));
  }

  remove(mark: string, count: number, reason: string): void {
    this.#change(() => removeStock(this.#ledger, mark, count, reason));
  }

  merge(lines: readonly MergeLine[]): MergeResult {
    return this.#change(() => mergeStock(this.#ledger, lines));
  }

  setKeepRule(rule: ShopKeepRule): void {
    this.#change(() => setKeepRuleOf(this.#connection, rule));
  }

  hold(cutting: PlannedCutting): RackJob {
    return this.#change(() => holdPlan(this.#ledger, cutting));
  }

  letGo(plan: string): RackJob {
    return this.#change(() => letPlanGo(this.#ledger, plan));
  }

  receive(cutting: PlannedCutting): RackJob {
    return this.#change(() => receivePlan(this.#ledger, cutting));
  }

  book(cutting: PlannedCutting, layouts?: readonly LayoutTimes[]): Booked {
    return this.#change(() => bookPlan(this.#ledger, cutting, layouts));
  }

  undo(): { readonly booking: number; readonly job: RackJob; readonly gone: readonly string[] } {
    return this.#change(() => undoBooking(this.#ledger));
  }

  close(): void {
    tellingErrors(this.#path, () => this.#connection.close());
  }

  #head(): { readonly id: string; readonly revision: number } {
    const row = this.#connection
      .prepare<[], { readonly id: string; readonly revision: number }>(
        'SELECT id, revision FROM rack',
      )
      .get();
    if (row === undefined) throw new RackError('damaged', `${this.#path}: it has no head`);
    return row;
  }

  #read<T>(look: () => T): T {
    return this.#patiently(this.#connection.transaction(look).deferred);
  }

  #change<T>(deed: () => T): T {
    const whole = this.#connection.transaction(() => {
      const result = deed();
      this.#connection.prepare('UPDATE rack SET revision = revision + 1').run();
      return result;
    });
    return this.#patiently(whole.immediate);
  }

  /** SQLite waits for other programs by itself, but for a few moments in which it says that it is busy. */
  #patiently<T>(deed: () => T): T {
    return tellingErrors(this.#path, () => {
      for (let tries = 1; ; tries++) {
        try {
          return deed();
        } catch (error) {
          if (!/^SQLITE_BUSY/.test(errorCode(error) ?? '') || tries >= TRIES) throw error;
          Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
        }
      }
    });
  }
}
