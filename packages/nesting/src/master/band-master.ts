import { type Engines, Master } from '../solvers/engine-choice.js';
import type { LinearColumn, LinearRow } from '../solvers/linear-model.js';
import type { BandBook } from './band-book.js';
import type { Measure, Objective } from './objective.js';
import type { StockClass } from './stock-class.js';

export interface BandMasterRequest {
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly objective: Objective;
  /** For each piece, what going without one costs; absent where that is not allowed. */
  readonly penalties?: readonly number[];
  /** True where supplies must be taken in whole packs. */
  readonly packs?: boolean;
  /**
   * Where spare pieces count as a gain: how many of each piece make up one measure
   * of them, all of which are needed for it. Absent where they count nothing.
   */
  readonly spare?: readonly number[];
  /** Measures of spare pieces beyond which they count nothing; 6 when absent. */
  readonly mostSpare?: number;
  /** By index of the slot, how many are needed besides those of the bands that are cut; 0 when absent. */
  readonly needed?: readonly number[];
  readonly book: BandBook;
  readonly engines: Engines;
}

/** Amounts that a solved master gives. */
export interface BandAnswer {
  readonly status: 'optimal' | 'stopped';
  readonly cost: number;
  /** How many of each sheet pattern of the book; 0 for those not in the master. */
  readonly sheets: readonly number[];
  /** How many of each band of the book. */
  readonly bands: readonly number[];
  /** How many of each supply, by class. */
  readonly supplies: readonly (readonly number[])[];
  /** How many of each piece are gone without; empty where that is not allowed. */
  readonly short: readonly number[];
  /** Of the pieces, the classes, the caps and the slots; empty for whole numbers. */
  readonly duals: BandDuals | undefined;
}

export interface BandDuals {
  readonly pieces: readonly number[];
  readonly classes: readonly number[];
  /** One for each cap, at least 0. */
  readonly caps: readonly number[];
  /** By index of the slot. */
  readonly slots: readonly number[];
}

const MOST_SPARE = 6;

/**
 * The master on two levels: supplies of stock are divided into slots by sheet
 * patterns, and bands in the slots give pieces. A row for each piece (its
 * demand), each class (sheets cut are at most sheets taken), each cap of
 * the objective, and each slot (bands cut are at most slots there are). Where
 * slivers are no trouble, a slot may serve as the next narrower one.
 */
export class BandMaster {
  readonly #master: Master;
  readonly #request: BandMasterRequest;
  readonly #firstClass: number;
  readonly #firstCap: number;
  readonly #firstShort: number;
  #slotRows: number[] = [];
  #sheetColumns: number[] = [];
  #bandColumns: number[] = [];

  constructor(request: BandMasterRequest) {
    const { classes, demand, objective, penalties } = request;
    this.#request = request;
    const rows: LinearRow[] = [
      ...demand.map((quantity) => ({ sense: 'at least', bound: quantity }) as const),
      ...classes.map(() => ({ sense: 'at least', bound: 0 }) as const),
    ];
    this.#firstClass = demand.length;
    this.#firstCap = rows.length;
    rows.push(
      ...objective.caps.map(({ atMost }) => ({ sense: 'at most', bound: atMost }) as const),
    );
    this.#master = new Master(rows, request.engines);
    this.#master.add(classes.flatMap((entry, g) => this.#supplyColumns(entry, g)));
    this.#firstShort = this.#master.columns;
    if (penalties !== undefined) {
      this.#master.add(
        penalties.map((penalty, piece) => ({
          cost: penalty,
          upper: Number.POSITIVE_INFINITY,
          rows: [piece],
          coefficients: [1],
        })),
      );
    }
    if (request.spare !== undefined) {
      this.#master.add([
        {
          cost: -1,
          upper: request.mostSpare ?? MOST_SPARE,
          rows: request.spare.map((_, piece) => piece),
          coefficients: request.spare.map((amount) => -amount),
        },
      ]);
    }
  }

  /** Takes in what the book has got since the last time, or only the named sheets and bands. */
  addFromBook(sheets?: readonly number[], bands?: readonly number[]): void {
    const { book } = this.#request;
    this.#addSlots();
    const columns: LinearColumn[] = [];
    const first = this.#master.columns;
    for (const sheet of sheets ?? book.sheets.keys()) {
      if (this.#sheetColumns[sheet] !== undefined) continue;
      this.#sheetColumns[sheet] = first + columns.length;
      columns.push(this.#sheetColumn(sheet));
    }
    for (const band of bands ?? book.bands.keys()) {
      if (this.#bandColumns[band] !== undefined) continue;
      this.#bandColumns[band] = first + columns.length;
      columns.push(this.#bandColumn(band));
    }
    this.#master.add(columns);
  }

  get columns(): number {
    return this.#master.columns;
  }

  setDemand(demand: readonly number[]): void {
    demand.forEach((quantity, piece) => {
      this.#master.setRow(piece, quantity);
    });
  }

  setSupplies(classes: readonly StockClass[]): void {
    let column = 0;
    for (const entry of classes) {
      for (const supply of entry.supplies) {
        this.#master.setColumn(column, supply.least, supply.count);
        column++;
      }
    }
  }

  /** Cuts at least so many of a band; no more where it is of no further use. */
  setBand(band: number, least: number, ofUse: boolean): void {
    const most = ofUse ? Number.POSITIVE_INFINITY : least;
    this.#master.setColumn(this.#bandColumns[band], least, most);
  }

  /** Cuts at least so many sheets by a sheet pattern. */
  setLeastOfSheet(sheet: number, least: number): void {
    this.#master.setColumn(this.#sheetColumns[sheet], least, Number.POSITIVE_INFINITY);
  }

  /** Needs so many of a slot besides those of the bands that are cut; below 0, there are so many more. */
  setNeeded(slot: number, needed: number): void {
    this.#master.setRow(this.#slotRows[slot], needed);
  }

  setCap(cap: number, atMost: number): void {
    this.#master.setRow(this.#firstCap + cap, atMost);
  }

  /** @returns undefined where there is no answer: proven, or none found in time */
  async solve(limits: {
    readonly integer: boolean;
    readonly seconds: number;
    readonly nodes?: number;
    readonly gap?: number;
    readonly cutoff?: number;
  }): Promise<BandAnswer | 'infeasible' | 'stopped'> {
    const answer = await this.#master.solve(limits);
    if (answer.status === 'infeasible') return 'infeasible';
    if (answer.status === 'rejected' || answer.values === undefined) return 'stopped';
    const { book, classes, penalties, demand, packs, objective } = this.#request;
    const { values } = answer;
    let column = 0;
    const supplies = classes.map((entry) =>
      entry.supplies.map((supply) => {
        const amount = values[column++];
        return packs === true ? amount * supply.unit : amount;
      }),
    );
    const duals = answer.status === 'optimal' && !limits.integer ? answer.duals : undefined;
    return {
      status: answer.status,
      cost: answer.objective ?? Number.NaN,
      supplies,
      sheets: book.sheets.map((_, s) => values[this.#sheetColumns[s] ?? -1] ?? 0),
      bands: book.bands.map((_, b) => values[this.#bandColumns[b] ?? -1] ?? 0),
      short:
        penalties === undefined
          ? []
          : values.slice(this.#firstShort, this.#firstShort + demand.length),
      duals: duals && {
        pieces: duals.slice(0, demand.length),
        classes: duals.slice(this.#firstClass, this.#firstClass + classes.length),
        caps: objective.caps.map((_, c) => -duals[this.#firstCap + c]),
        slots: this.#slotRows.map((row) => duals[row]),
      },
    };
  }

  close(): void {
    this.#master.close();
  }

  #supplyColumns(entry: StockClass, stockClass: number): readonly LinearColumn[] {
    const { objective, packs } = this.#request;
    return entry.supplies.map((supply): LinearColumn => {
      const unit = packs === true ? supply.unit : 1;
      const entries = [
        [this.#firstClass + stockClass, unit] as const,
        ...this.#capEntries((measure) => measure.of(supply) * unit),
      ];
      return {
        cost: (objective.cost?.of(supply) ?? 0) * unit,
        lower: supply.least / unit,
        upper: supply.count / unit,
        rows: entries.map(([row]) => row),
        coefficients: entries.map(([, coefficient]) => coefficient),
      };
    });
  }

  #capEntries(amount: (measure: Measure) => number): readonly (readonly [number, number])[] {
    return this.#request.objective.caps
      .map(({ measure }, c) => [this.#firstCap + c, amount(measure)] as const)
      .filter(([, coefficient]) => coefficient !== 0);
  }

  #addSlots(): void {
    const { book } = this.#request;
    const base = this.#firstCap + this.#request.objective.caps.length;
    const from = this.#slotRows.length;
    const added = book.slots.slice(from);
    if (added.length === 0) return;
    const needed = this.#request.needed ?? [];
    this.#master.addRows(
      added.map((_, i) => ({ sense: 'at least', bound: needed[from + i] ?? 0 }) as const),
    );
    added.forEach((_, i) => {
      this.#slotRows.push(base + from + i);
    });
    const transfers: LinearColumn[] = [];
    added.forEach((_, i) => {
      const slot = from + i;
      const [wider, narrower] = this.#neighbours(slot, from + i);
      if (wider !== undefined) transfers.push(this.#transfer(wider, slot));
      if (narrower !== undefined) transfers.push(this.#transfer(slot, narrower));
    });
    this.#master.add(transfers);
  }

  /** The next wider and the next narrower slot among the first `among`. */
  #neighbours(slot: number, among: number): [number | undefined, number | undefined] {
    const { book } = this.#request;
    let wider: number | undefined;
    let narrower: number | undefined;
    for (const other of book.alike(slot)) {
      if (other >= among) break;
      const extent = book.slots[other].extent;
      if (book.mayLieIn(slot, other)) {
        if (wider === undefined || extent < book.slots[wider].extent) wider = other;
      } else if (book.mayLieIn(other, slot)) {
        if (narrower === undefined || extent > book.slots[narrower].extent) narrower = other;
      }
    }
    return [wider, narrower];
  }

  #transfer(wider: number, narrower: number): LinearColumn {
    const [a, b] = [this.#slotRows[wider], this.#slotRows[narrower]];
    return {
      cost: 0,
      upper: Number.POSITIVE_INFINITY,
      rows: a < b ? [a, b] : [b, a],
      coefficients: a < b ? [-1, 1] : [1, -1],
    };
  }

  #sheetColumn(index: number): LinearColumn {
    const sheet = this.#request.book.sheets[index];
    const slots = sheet.slots.map(([slot, count]) => [this.#slotRows[slot], count] as const);
    return this.#valued(sheet.kept, [[this.#firstClass + sheet.box, -1], ...slots]);
  }

  #bandColumn(index: number): LinearColumn {
    const band = this.#request.book.bands[index];
    return this.#valued(band.kept, [...band.counts, [this.#slotRows[band.slot], -1]]);
  }

  /** A column whose remnants take their value off the cost. */
  #valued(kept: number, entries: readonly (readonly [number, number])[]): LinearColumn {
    const all = [...entries, ...this.#capEntries((measure) => -kept * measure.coin)];
    all.sort((a, b) => a[0] - b[0]);
    return {
      cost: -kept * (this.#request.objective.cost?.coin ?? 0),
      upper: Number.POSITIVE_INFINITY,
      rows: all.map(([row]) => row),
      coefficients: all.map(([, coefficient]) => coefficient),
    };
  }
}
