import type { Statement } from 'better-sqlite3';
import { markOf } from '../offcut-mark.js';
import type { NewStock, RackDeed, RackSize, RackStock } from '../rack.js';
import { RackError } from '../rack-error.js';
import { nanometres } from './nanometres.js';
import type { Connection } from './rack-file.js';
import { type StockRow, toStock } from './stock-rows.js';

/** One change of what lies on the rack, or of what is promised of it. */
export interface Entry {
  /** The number of the stock's row. */
  readonly stock: number;
  readonly deed: RackDeed;
  readonly change?: number;
  readonly promisedChange?: number;
  readonly job?: number | undefined;
  readonly booking?: number | undefined;
  readonly note?: string;
}

/**
 * The rack's tables, changed only by entries that say what was done: counts and
 * promises are at all times the sums of the entries.
 */
export class Ledger {
  readonly connection: Connection;
  readonly now: () => string;
  /** Those made ready so far, by their text: making one ready takes longer than running it. */
  readonly #statements = new Map<string, Statement>();

  constructor(connection: Connection, now: () => string) {
    this.connection = connection;
    this.now = now;
  }

  /** A statement made ready, its values and its rows as its text has them. */
  prepare<Values extends unknown[], Row = unknown>(sql: string): Statement<Values, Row> {
    const known = this.#statements.get(sql);
    const statement = known ?? this.connection.prepare(sql);
    if (known === undefined) this.#statements.set(sql, statement);
    // What its text takes and gives is for the caller to say, as with the connection's own.
    return statement as Statement<Values, Row>;
  }

  /**
   * Writes an entry, and changes count and promise by it.
   * @throws RackError where there is less of it than the entry takes
   */
  enter(entry: Entry): void {
    const { stock, deed, change = 0, promisedChange = 0, job, booking, note = '' } = entry;
    if (change !== 0 || promisedChange !== 0) {
      const { count, promised, mark } = this.row(stock);
      const [left, bound] = [count + change, promised + promisedChange];
      if (left < 0 || bound < 0 || bound > left) {
        throw new RackError(
          'not enough',
          `${mark}: ${count - promised} of it are free; plan again`,
        );
      }
      this.#run('UPDATE stock SET count = ?, promised = ? WHERE number = ?', left, bound, stock);
    }
    if (promisedChange !== 0 && job !== undefined) {
      this.#run('INSERT OR IGNORE INTO promise VALUES (?, ?, 0)', job, stock);
      this.#run(
        'UPDATE promise SET count = count + ? WHERE job = ? AND stock = ?',
        promisedChange,
        job,
        stock,
      );
    }
    this.#run(
      `INSERT INTO event (at, stock, deed, change, promised_change, job, booking, note)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
      this.now(),
      stock,
      deed,
      change,
      promisedChange,
      job ?? null,
      booking ?? null,
      note,
    );
  }

  /**
   * Puts a thing on the rack; whole sheets join those of their size.
   * @returns the number of its row
   */
  put(stock: NewStock, entry: Omit<Entry, 'stock' | 'change'>): number {
    const size = sizeColumns(stock);
    const known = stock.kind === 'sheets' ? this.sheetsIn(size) : undefined;
    const number = known ?? this.#newRow(stock, size);
    this.enter({ ...entry, stock: number, change: stock.count });
    return number;
  }

  row(number: number): StockRow {
    const row = this.prepare<[number], StockRow>('SELECT * FROM stock WHERE number = ?').get(
      number,
    );
    if (row === undefined) throw new Error(`The rack has no row ${number}.`);
    return row;
  }

  /** The row under a mark that was used at any time. */
  rowOf(mark: string): StockRow | undefined {
    return this.prepare<[string], StockRow>('SELECT * FROM stock WHERE mark = ?').get(mark);
  }

  /** @throws RackError where nothing ever had the mark */
  rowMarked(mark: string): StockRow {
    const row = this.rowOf(mark);
    if (row === undefined) {
      throw new RackError(
        'no such mark',
        `${mark}: nothing on the rack has this mark; see rack list`,
      );
    }
    return row;
  }

  stock(number: number): RackStock {
    return toStock(this.row(number));
  }

  /** How many of a stock are promised to a job. */
  promised(job: number, stock: number): number {
    return (
      this.prepare<[number, number], number>(
        'SELECT count FROM promise WHERE job = ? AND stock = ?',
      )
        .pluck()
        .get(job, stock) ?? 0
    );
  }

  /** The row that whole sheets of a size lie under, if any ever did. */
  sheetsOf(size: RackSize): number | undefined {
    return this.sheetsIn(sizeColumns(size));
  }

  #newRow(stock: NewStock, size: SizeColumns): number {
    const { kind, name, place, origin, bookValue, count } = stock;
    if (!Number.isSafeInteger(count) || count < 1 || (kind === 'offcut' && count !== 1)) {
      throw new RackError(
        'bad value',
        `count must be a whole number of at least 1; found ${count}`,
      );
    }
    const number =
      (this.prepare<[], number | null>('SELECT max(number) FROM stock').pluck().get() ?? 0) + 1;
    this.#run(
      `INSERT INTO stock (number, mark, kind, name, length, width, metal, thickness, rolled, place,
         origin, added_at, book_value, count) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)`,
      number,
      markOf(number),
      kind,
      name,
      size.length,
      size.width,
      size.metal,
      size.thickness,
      size.rolled,
      place,
      origin,
      this.now(),
      bookValue ?? null,
    );
    return number;
  }

  sheetsIn({ length, width, metal, thickness, rolled }: SizeColumns): number | undefined {
    return this.prepare<unknown[], number>(
      `SELECT number FROM stock WHERE kind = 'sheets' AND length = ? AND width = ? AND metal = ?
           AND thickness IS ? AND rolled IS ?`,
    )
      .pluck()
      .get(length, width, metal, thickness, rolled);
  }

  #run(sql: string, ...values: readonly unknown[]): void {
    this.prepare(sql).run(...values);
  }
}

export interface SizeColumns {
  readonly length: number;
  readonly width: number;
  readonly metal: string;
  readonly thickness: number | null;
  readonly rolled: string | null;
}

/** A size as the tables have it: the longer side first, and the rolling seen along it. */
export function sizeColumns(size: RackSize): SizeColumns {
  const length = nanometres(size.length, 'length');
  const width = nanometres(size.width, 'width');
  const { rolled } = size;
  const lies = length >= width || rolled === undefined ? rolled : ACROSS[rolled];
  return {
    length: Math.max(length, width),
    width: Math.min(length, width),
    metal: size.metal,
    thickness: size.thickness === undefined ? null : nanometres(size.thickness, 'thickness'),
    rolled: lies ?? null,
  };
}

const ACROSS = { along: 'across', across: 'along' } as const;
