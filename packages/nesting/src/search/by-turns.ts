/** How much a new result weighs against those before, and for how many turns a way may be put off. */
const NEW = 0.5;
const LONGEST = 16;

interface State {
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
export class ByTurns<Way> {
  readonly #ways: readonly [Way, Way];
  readonly #states: readonly [State, State] = [untried(), untried()];
  #turn = 0;

  /** @param first the one that is tried first, and where both are due */
  constructor(first: Way, second: Way) {
    this.#ways = [first, second];
  }

  /** The way that is to be tried now. */
  get next(): Way {
    const [first, second] = this.#states;
    return this.#ways[second.due < first.due ? 1 : 0];
  }

  /** @param brought what trying the way brought; undefined where that was nothing */
  tried(way: Way, brought: number | undefined): void {
    const [first, second] = this.#states;
    const [state, { mean: other }] = way === this.#ways[0] ? [first, second] : [second, first];
    const less = brought === undefined || (other !== undefined && brought < other);
    this.#turn++;
    state.putOff = less ? Math.min(LONGEST, 2 * state.putOff) : 1;
    state.due = this.#turn + state.putOff;
    if (brought === undefined) return;
    state.mean = state.mean === undefined ? brought : state.mean + NEW * (brought - state.mean);
  }
}

function untried(): State {
  return { due: 0, putOff: 1, mean: undefined };
}
