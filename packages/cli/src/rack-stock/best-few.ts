/** The best of many, a few of them, best first; of equals the earlier. */
export class BestFew<Entry> {
  readonly #most: number;
  readonly #isBetter: (one: Entry, other: Entry) => boolean;
  readonly #entries: Entry[] = [];

  constructor(most: number, isBetter: (one: Entry, other: Entry) => boolean) {
    this.#most = most;
    this.#isBetter = isBetter;
  }

  get entries(): readonly Entry[] {
    return this.#entries;
  }

  offer(entry: Entry): void {
    const last = this.#entries.at(-1);
    const isFull = this.#entries.length === this.#most;
    if (isFull && (last === undefined || !this.#isBetter(entry, last))) return;
    if (isFull) this.#entries.pop();
    let low = 0;
    let high = this.#entries.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      const there = this.#entries[middle];
      if (there !== undefined && this.#isBetter(entry, there)) high = middle;
      else low = middle + 1;
    }
    this.#entries.splice(low, 0, entry);
  }
}
