import type { Deadline } from '../deadline.js';

/** Steps between two looks at the clock. */
const BETWEEN_LOOKS = 100_000;

/** Steps that a search may take, and the time until when. */
export class Steps {
  readonly #deadline: Deadline;
  #left: number;
  #nextLook: number;

  constructor(most: number, deadline: Deadline) {
    this.#deadline = deadline;
    this.#left = most;
    this.#nextLook = most - BETWEEN_LOOKS;
  }

  /** Takes some. @returns false once they, or the time, have run out */
  take(count: number): boolean {
    this.#left -= count;
    if (this.#left < this.#nextLook) {
      this.#nextLook = this.#left - BETWEEN_LOOKS;
      if (this.#deadline.left() <= 0) this.#left = -1;
    }
    return this.#left >= 0;
  }
}
