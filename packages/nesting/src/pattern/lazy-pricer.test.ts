import { describe, expect, it } from 'vitest';
import { LazyPricer } from './lazy-pricer.js';
import type { PatternPricer } from './pattern-pricer.js';

/** Answers by what it was made with, so that it must be called as a method. */
class Priced implements PatternPricer {
  readonly #worth = [7];

  price() {
    return { worth: this.#worth, patterns: () => [] };
  }

  atMost() {
    return this.#worth;
  }
}

describe('LazyPricer', () => {
  it('is made when it is first asked, and once', () => {
    let made = 0;
    const lazy = new LazyPricer(() => {
      made++;
      return new Priced();
    });
    expect(made).toBe(0);
    expect(lazy.price([], 0).worth).toEqual([7]);
    expect(lazy.atMost?.([], 0)).toEqual([7]);
    expect(made).toBe(1);
  });

  it('lists only what the other lists', () => {
    const lazy = new LazyPricer(() => new Priced());
    expect([lazy.within, lazy.bandsOf]).toEqual([undefined, undefined]);
    const listing = new LazyPricer(() =>
      Object.assign(new Priced(), {
        within: () => ({ bands: [], sheets: [] }),
        bandsOf: () => [],
      }),
    );
    expect(listing.within?.([], [], 0, 1)).toEqual({ bands: [], sheets: [] });
    const at = { box: 0, cuts: 'along', extent: 1 } as const;
    expect(listing.bandsOf?.([], at, 0, 0, 1)).toEqual([]);
  });
});
