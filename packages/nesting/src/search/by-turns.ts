/** How much a new result weighs against those before, and for how many turns a way may be put off. */
const NEW = 0.5;
const LONGEST = 16;

interface Way {
  /** The turn from which it may be tried again, and for how many it was put off last. */
  due: number;
  putOff: number;
  /** What it brought, on average, the last ones counting most; undefined before its first try. */
  mean: number | undefined;
}

/**
 * Tries two ways by turns; the one that brings less than the other does on average is put off,
 * twice as long each time until it brings more again.
 */
export class ByTurns {
  readonly #ways: readonly [Way, Way] = [untried(), untried()];
  #turn = 0;

  /** The way that is to be tried now. */
  get next(): 0 | 1 {
    const [first, second] = this.#ways;
    return second.due < first.due ? 1 : 0;
  }

  /** @param brought what trying the way brought; undefined where that was nothing */
  tried(index: 0 | 1, brought: number | undefined): void {
    const way = this.#ways[index];
    const other = this.#ways[1 - index].mean;
    const less = brought === undefined || (other !== undefined && brought < other);
    this.#turn++;
    way.putOff = less ? Math.min(LONGEST, 2 * way.putOff) : 1;
    way.due = this.#turn + way.putOff;
    if (brought === undefined) return;
    way.mean = way.mean === undefined ? brought : way.mean + NEW * (brought - way.mean);
  }
}

function untried(): Way {
  return { due: 0, putOff: 1, mean: undefined };
}
