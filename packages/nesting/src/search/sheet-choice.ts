import type { Pattern } from '../pattern/part.js';
import type { Planned } from './planned.js';

/** Sheets that are freed at first, and at the fewest. */
const FREED_FIRST = 4;
const FEWEST_FREED = 2;
/** By how much the number of freed sheets grows where they were solved; it falls by 1 where not. */
const MORE_EACH_TIME = 0.05;
/** So often all sheets are freed together before the search starts anew. */
const TIMES_ALL = 4;
/** Most sheets that are freed at a time. */
const MOST_FREED = 30;
/** What sheets that waste nothing weigh, as a share of the mean waste. */
const EVEN = 0.3;

/** Sheets of a plan that are to be cut again, and the others. */
export interface Freed {
  readonly rest: readonly Planned[];
  readonly freed: readonly Pattern[];
}

/**
 * Which sheets to free: those that waste more the likelier, since only what they
 * waste can be won; more at a time where that is solved with ease.
 */
export class SheetChoice {
  readonly #random: () => number;
  readonly #waste: (pattern: Pattern) => number;
  #freed = FREED_FIRST;
  #all = false;
  #exhausted = 0;

  /** @param waste what a sheet costs beyond the worth of its pieces */
  constructor(random: () => number, waste: (pattern: Pattern) => number) {
    this.#random = random;
    this.#waste = waste;
  }

  /** True once all sheets were freed often, and their best answer found each time. */
  get exhausted(): boolean {
    return this.#exhausted >= TIMES_ALL;
  }

  /** Where all sheets are freed, only other patterns can make a difference. */
  get shaken(): (() => number) | undefined {
    return this.#all ? this.#random : undefined;
  }

  choose(planned: readonly Planned[]): Freed {
    const wanted = Math.round(this.#freed);
    const chosen = this.chooseSome(planned, wanted);
    this.#all = chosen.freed.length < wanted || chosen.rest.length === 0;
    return chosen;
  }

  chooseSome(planned: readonly Planned[], wanted: number): Freed {
    const sheets = planned.flatMap(({ pattern, count }) =>
      new Array<Pattern>(Math.min(count, wanted)).fill(pattern),
    );
    const wastes = sheets.map((pattern) => Math.max(0, this.#waste(pattern)));
    const mean = wastes.reduce((sum, waste) => sum + waste, 0) / Math.max(1, wastes.length);
    // Weighted sampling without replacement (Efraimidis and Spirakis 2006).
    const keys = wastes.map((waste) => this.#random() ** (1 / (waste + EVEN * mean + 1e-9)));
    const freed = [...keys.keys()]
      .sort((a, b) => keys[b] - keys[a] || a - b)
      .slice(0, wanted)
      .map((index) => sheets[index]);
    return { rest: withoutSheets(planned, freed), freed };
  }

  /** @param solved whether the best answer for the sheets last chosen was found */
  learn(solved: boolean): void {
    if (solved && this.#all) this.#exhausted++;
    this.#freed = solved
      ? Math.min(this.#freed + MORE_EACH_TIME, MOST_FREED)
      : Math.max(FEWEST_FREED, this.#freed - 1);
  }
}

function withoutSheets(planned: readonly Planned[], freed: readonly Pattern[]): readonly Planned[] {
  return planned.flatMap(({ pattern, count }) => {
    const left = count - freed.filter((other) => other === pattern).length;
    return left > 0 ? [{ pattern, count: left }] : [];
  });
}
