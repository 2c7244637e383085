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
 * Lists the fillings of a bounded knapsack that are worth at least `least` and
 * to which no further copy can be added. Depth first from the last item to the
 * first; a branch ends where even the best filling of the rest is worth too little.
 * @returns undefined where the budget ran out before all were listed
 */
export function listFillings(
  request: FillingRequest,
  budget: ListingBudget,
): readonly Filling[] | undefined {
  const { capacity, items, values, least, required } = request;
  const table = worthTable(request);
  const copies = new Int32Array(items.length);
  const found: Filling[] = [];

  function visit(item: number, room: number, worth: number, anyRequired: boolean): boolean {
    if (--budget.steps < 0) return false;
    if (worth + table[item * (capacity + 1) + room] < least) return true;
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

/** table[i * (capacity + 1) + room]: the most that the first i items are worth in that room. */
function worthTable({ capacity, items, values }: FillingRequest): Float64Array {
  const row = capacity + 1;
  const table = new Float64Array((items.length + 1) * row);
  items.forEach(({ size, most }, index) => {
    const above = index * row;
    const here = above + row;
    for (let room = 0; room < row; room++) {
      let best = table[above + room];
      // Taking copies without their limit only overstates the worth, which keeps the search exact.
      if (room >= size && most > 0) {
        best = Math.max(best, table[here + room - size] + values[index]);
      }
      table[here + room] = best;
    }
  });
  return table;
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
