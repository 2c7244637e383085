/** Something that takes up room and may be taken a number of times. */
export interface KnapsackItem {
  /** At least 1. */
  readonly size: number;
  /** Most copies, at least 0. */
  readonly most: number;
}

/**
 * The bounded knapsack by dynamic programming over room, kept layer by layer:
 * after one pass the best filling by the first k items is known for every k,
 * with its counts. Items sorted by strip width thus give the best strip of
 * every width at once (Gilmore and Gomory 1965, "Multistage cutting stock
 * problems of two and more dimensions", the first stage's knapsacks).
 *
 * An item whose copies cannot exhaust the room is split into lots of 1, 2, 4,
 * ... copies, each taken or left; any other is taken copy by copy. Values that
 * are whole numbers below 2^53 in sum stay exact.
 */
export class LayeredKnapsack {
  readonly #capacity: number;
  readonly #layers: readonly Layer[];
  /** Layers that belong to the first k items. */
  readonly #layersOf: readonly number[];
  readonly #best: Float64Array;
  readonly #taken: Uint8Array;
  readonly #worth: Float64Array;

  constructor(capacity: number, items: readonly KnapsackItem[]) {
    this.#capacity = capacity;
    const layers: Layer[] = [];
    const layersOf = [0];
    items.forEach((item, index) => {
      layers.push(...layersFor(item, index, capacity));
      layersOf.push(layers.length);
    });
    this.#layers = layers;
    this.#layersOf = layersOf;
    this.#best = new Float64Array(capacity + 1);
    this.#taken = new Uint8Array(layers.length * (capacity + 1));
    this.#worth = new Float64Array(items.length + 1);
  }

  /** Solves for these values, one for each item; items worth 0 or less are left. */
  solve(values: ArrayLike<number>): void {
    const capacity = this.#capacity;
    const best = this.#best.fill(0);
    const taken = this.#taken.fill(0);
    let layerIndex = 0;
    for (let item = 0; item < values.length; item++) {
      for (; layerIndex < this.#layersOf[item + 1]; layerIndex++) {
        const layer = this.#layers[layerIndex];
        const value = values[item] * layer.copies;
        if (value <= 0) continue;
        const base = layerIndex * (capacity + 1);
        if (layer.again) {
          for (let room = layer.size; room <= capacity; room++) {
            const worth = best[room - layer.size] + value;
            if (worth > best[room]) {
              best[room] = worth;
              taken[base + room] = 1;
            }
          }
        } else {
          for (let room = capacity; room >= layer.size; room--) {
            const worth = best[room - layer.size] + value;
            if (worth > best[room]) {
              best[room] = worth;
              taken[base + room] = 1;
            }
          }
        }
      }
      this.#worth[item + 1] = best[capacity];
    }
  }

  /** The best value that the first `items` items can give. */
  worth(items: number): number {
    return this.#worth[items];
  }

  /** Copies of each item in a best filling by the first `items` items, as [item, copies]. */
  counts(items: number): readonly (readonly [number, number])[] {
    const counts = new Map<number, number>();
    let room = this.#capacity;
    for (let index = this.#layersOf[items] - 1; index >= 0; index--) {
      const layer = this.#layers[index];
      const base = index * (this.#capacity + 1);
      while (this.#taken[base + room] === 1) {
        counts.set(layer.item, (counts.get(layer.item) ?? 0) + layer.copies);
        room -= layer.size;
        if (!layer.again) break;
      }
    }
    return [...counts].sort((a, b) => a[0] - b[0]);
  }
}

interface Layer {
  readonly item: number;
  readonly copies: number;
  /** Room for all copies of the layer. */
  readonly size: number;
  /** True where the layer may be taken over and over. */
  readonly again: boolean;
}

function layersFor(item: KnapsackItem, index: number, capacity: number): readonly Layer[] {
  const fits = Math.floor(capacity / item.size);
  if (fits === 0 || item.most === 0) return [];
  if (item.most >= fits) return [{ item: index, copies: 1, size: item.size, again: true }];
  const layers: Layer[] = [];
  let left = item.most;
  for (let lot = 1; left > 0; lot *= 2) {
    const copies = Math.min(lot, left);
    layers.push({ item: index, copies, size: copies * item.size, again: false });
    left -= copies;
  }
  return layers;
}
