import type { ListedFace, ListedStrip } from '../pattern/strip-lister.js';
import { type Engines, Master } from '../solvers/engine-choice.js';
import type { LinearColumn, LinearRow } from '../solvers/linear-model.js';
import { classCost, type Measure } from './objective.js';
import type { StockClass } from './stock-class.js';

export interface SheetBySheetRequest {
  readonly classes: readonly StockClass[];
  readonly demand: readonly number[];
  readonly measure: Measure;
  /** All strips and rests that there are to choose from. */
  readonly faces: readonly ListedFace[];
  /** Plans that cost more are of no use. */
  readonly atMost: number;
  /** How many sheets of each class there may be at most. */
  readonly sheets: readonly number[];
  /** The shear's kerf, and whether some rests are too narrow for it; in gross ticks. */
  readonly kerf: number;
  readonly slivers: boolean;
  readonly engines: Engines;
}

/** One sheet, and the strips that it is cut into. */
export interface SheetOfStrips {
  readonly face: ListedFace;
  readonly strips: readonly ListedStrip[];
}

export interface SheetBySheetAnswer {
  /** `infeasible`: no plan costs so little. */
  readonly status: 'optimal' | 'infeasible' | 'stopped';
  readonly sheets?: readonly SheetOfStrips[];
  /** By the measure, coins kept in sheets taken off. */
  readonly cost?: number;
}

/** What became of one sheet in the model: by face, the columns of its rests and strips. */
interface Sheet {
  readonly faces: readonly { readonly face: ListedFace; readonly from: number }[];
  readonly used: readonly number[];
}

/**
 * The integer master of few sheets: for each sheet by itself, which strips are cut from
 * it, and what is left beside them (Kantorovich 1960, "Mathematical methods of organizing
 * and planning production"). Strips need not be put together to patterns first, of which
 * there would be far more. It counts money to the coin, and every piece exactly as often
 * as it is wanted.
 *
 * A rest that is too narrow for the shear is allowed where a strip that stretches may
 * take it up.
 */
export class SheetBySheetMaster {
  readonly #request: SheetBySheetRequest;
  readonly #rows: LinearRow[] = [];
  readonly #columns: LinearColumn[] = [];
  /** The row of what the plan costs. */
  readonly #cost: number;
  readonly #sheets: readonly Sheet[];

  constructor(request: SheetBySheetRequest) {
    this.#request = request;
    const { classes, demand, sheets, atMost } = request;
    for (const bound of demand) {
      this.#row('at least', bound);
      this.#row('at most', bound);
    }
    this.#cost = this.#row('at most', atMost);
    this.#sheets = classes.flatMap((_, g) => this.#sheetsOf(g, sheets[g]));
  }

  get columns(): number {
    return this.#columns.length;
  }

  /** @param nodes of branching after which it stops */
  async solve(seconds: number, nodes: number): Promise<SheetBySheetAnswer> {
    const { demand, engines } = this.#request;
    // An engine may make nothing of a model without columns.
    if (this.#columns.length === 0 && demand.some((quantity) => quantity > 0)) {
      return { status: 'infeasible' };
    }
    const master = new Master(this.#rows, engines);
    try {
      master.add(this.#columns);
      const answer = await master.solve({ integer: true, seconds, nodes });
      if (answer.status === 'infeasible') return { status: 'infeasible' };
      if (answer.status === 'rejected' || answer.values === undefined) return { status: 'stopped' };
      const { status, values, objective = Number.NaN } = answer;
      return { status, cost: objective, sheets: this.#chosen(values) };
    } finally {
      master.close();
    }
  }

  #sheetsOf(stockClass: number, count: number): readonly Sheet[] {
    const { classes, faces, measure } = this.#request;
    const entry = classes[stockClass];
    const own = faces.filter(({ box }) => box === stockClass);
    const sheets: Sheet[] = [];
    /** The row by which the sheet before comes first, to which this one is added. */
    let after: number | undefined;
    for (let n = 0; n < count; n++) {
      const price = classCost(entry, n + 1, measure) - classCost(entry, n, measure);
      const once = this.#row('at most', 1);
      const next = n + 1 < count ? this.#row('at least', 0) : undefined;
      const used: number[] = [];
      const placed = own.map((face) => {
        const from = this.#columns.length;
        used.push(...this.#addFace(face, price, once, after, next));
        return { face, from };
      });
      sheets.push({ faces: placed, used });
      after = next;
    }
    return sheets;
  }

  /** @returns the columns that say that the face is used */
  #addFace(
    { breadth, strips, rests }: ListedFace,
    price: number,
    once: number,
    after: number | undefined,
    next: number | undefined,
  ): readonly number[] {
    const { kerf, slivers, measure, demand } = this.#request;
    const room = this.#row('at most', 0);
    const full = slivers ? this.#row('at least', 0) : undefined;
    const used = rests.map(({ extent, kept }) => {
      const entries: [number, number][] = [
        [once, 1],
        [room, extent - breadth],
      ];
      if (after !== undefined) entries.push([after, -1]);
      if (next !== undefined) entries.push([next, 1]);
      // With nothing left over, strips fill the breadth, or one of them is stretched.
      if (full !== undefined && extent === 0) entries.push([full, kerf - breadth]);
      return this.#column(price - measure.coin * kept, 1, entries);
    });
    for (const { extent, counts, kept, stretches } of strips) {
      const entries = counts.flatMap(([piece, copies]): [number, number][] => [
        [2 * piece, copies],
        [2 * piece + 1, copies],
      ]);
      entries.push([room, extent]);
      if (full !== undefined) entries.push([full, extent + (stretches ? breadth : 0)]);
      const most = counts.map(([piece, copies]) => Math.floor(demand[piece] / copies));
      this.#column(-measure.coin * kept, Math.min(...most, Math.floor(breadth / extent)), entries);
    }
    return used;
  }

  #row(sense: LinearRow['sense'], bound: number): number {
    return this.#rows.push({ sense, bound }) - 1;
  }

  #column(cost: number, upper: number, entries: readonly (readonly [number, number])[]): number {
    const sorted = [...entries, [this.#cost, cost] as const].sort((a, b) => a[0] - b[0]);
    const column = {
      cost,
      upper,
      rows: sorted.map(([row]) => row),
      coefficients: sorted.map(([, coefficient]) => coefficient),
    };
    return this.#columns.push(column) - 1;
  }

  #chosen(values: readonly number[]): readonly SheetOfStrips[] {
    return this.#sheets.flatMap(({ faces }) =>
      faces.flatMap(({ face, from }) => {
        const first = from + face.rests.length;
        const strips = face.strips.flatMap((strip, index) =>
          Array<ListedStrip>(Math.round(values[first + index])).fill(strip),
        );
        return strips.length > 0 ? [{ face, strips }] : [];
      }),
    );
  }
}
