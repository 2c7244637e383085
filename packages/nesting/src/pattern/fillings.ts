/** Something that takes up room and may be taken a number of times. */
export interface KnapsackItem {
  /** At least 1. */
  readonly size: number;
  /** Most copies, at least 0. */
  readonly most: number;
}

export interface FillingRequest {
  readonly capacity: number;
  readonly items: readonly KnapsackItem[];
  /** One for each item, at least 0. */
  readonly values: readonly number[];
  /** Only fillings worth at least this. */
  readonly least: number;
  /** At least one copy must be of an item from this index on. */
  readonly required: number;
}

/** Spent by a listing, shared among several of them. */
export interface ListingBudget {
  /** Fillings that may still be listed. */
  fillings: number;
  /** Steps of the search that may still be made. */
  steps: number;
}

export type Filling = readonly (readonly [number, number])[];

/**
 * The most that the first few items of a list are worth in every room, row by row as far as
 * it is asked for. Copies are taken without their limit, which only overstates the worth.
 */
export class MostWorth {
  readonly #items: readonly KnapsackItem[];
  readonly #values: readonly number[];
  readonly #rows: Float64Array[];

  constructor({ capacity, items, values }: Pick<FillingRequest, 'capacity' | 'items' | 'values'>) {
    this.#items = items;
    this.#values = values;
    this.#rows = [new Float64Array(capacity + 1)];
  }

  /** By number of items up to this one, and by room, what they are worth at most. */
  ofFirst(items: number): readonly Float64Array[] {
    while (this.#rows.length <= items) this.#rows.push(this.#next());
    return this.#rows;
  }

  #next(): Float64Array {
    const index = this.#rows.length - 1;
    const { size, most } = this.#items[index];
    const value = this.#values[index];
    const row = this.#rows[index].slice();
    if (most === 0) return row;
    for (let room = size; room < row.length; room++) {
      const worth = row[room - size] + value;
      if (worth > row[room]) row[room] = worth;
    }
    return row;
  }
}

/**
 * Lists the fillings of a bounded knapsack that are worth at least `least` and
 * to which no further copy can be added. Depth first from the last item to the
 * first; a branch ends where even the best filling of the rest is worth too little.
 * @param mostWorth of a list that begins with these items and values, where it is known
 * @returns undefined where the budget ran out before all were listed
 */
export function listFillings(
  request: FillingRequest,
  budget: ListingBudget,
  mostWorth = new MostWorth(request),
): readonly Filling[] | undefined {
  const { capacity, items, values, least, required } = request;
  const rows = mostWorth.ofFirst(items.length);
  const copies = new Int32Array(items.length);
  const found: Filling[] = [];

  function visit(item: number, room: number, worth: number, anyRequired: boolean): boolean {
    if (--budget.steps < 0) return false;
    if (worth + rows[item][room] < least) return true;
    if (item === 0) {
      if (!anyRequired || !isMaximal(items, copies, room)) return true;
      if (--budget.fillings < 0) return false;
      found.push(taken(copies));
      return true;
    }
    const index = item - 1;
    if (index < required && !anyRequired) return true;
    const { size, most } = items[index];
    for (let count = Math.min(most, Math.floor(room / size)); count >= 0; count--) {
      copies[index] = count;
      const met = anyRequired || (index >= required && count > 0);
      if (!visit(index, room - count * size, worth + count * values[index], met)) return false;
    }
    copies[index] = 0;
    return true;
  }

  const complete = visit(items.length, capacity, 0, required >= items.length);
  return complete ? found : undefined;
}

function isMaximal(items: readonly KnapsackItem[], copies: Int32Array, room: number): boolean {
  return items.every((item, index) => item.size > room || copies[index] >= item.most);
}

function taken(copies: Int32Array): Filling {
  const filling: [number, number][] = [];
  copies.forEach((count, index) => {
    if (count > 0) filling.push([index, count]);
  });
  return filling;
}
