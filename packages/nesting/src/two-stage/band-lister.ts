import { type ListingBudget, listFillings, MostWorth } from '../pattern/fillings.js';
import type { Band } from '../pattern/pattern-pricer.js';
import { cutStrip } from './cut-strip.js';
import type { Face, StripFamily } from './strip-family.js';

export interface BandListing {
  /** Where the bands are to lie. */
  readonly face: Face;
  /** Index of their width in the family. */
  readonly width: number;
  /** They hold a lay from this one of the width's on. */
  readonly required: number;
  /** What they are worth at least. */
  readonly least: number;
}

/** Lists bands of the widths of a family by what they are worth. */
export class BandLister {
  readonly #family: StripFamily;
  /** One for each lay. */
  readonly #items: readonly { readonly size: number; readonly most: number }[];
  readonly #values: readonly number[];
  /** Of the family's lays, from the first on: most widths take the first so many of them. */
  readonly #mostWorth: MostWorth;

  /**
   * @param demand copies of each piece that are of use
   * @param values one for each piece, at least 0
   */
  constructor(family: StripFamily, demand: readonly number[], values: ArrayLike<number>) {
    this.#family = family;
    this.#items = family.lays.map(({ along, piece }) => ({ size: along, most: demand[piece] }));
    this.#values = family.lays.map(({ piece }) => values[piece]);
    const { length: capacity } = family;
    this.#mostWorth = new MostWorth({ capacity, items: this.#items, values: this.#values });
  }

  /**
   * The bands of a width that are worth so much and to which no piece can be added.
   * @returns undefined where the budget runs out
   */
  list(
    { face: { box, cuts }, least, ...request }: BandListing,
    budget: ListingBudget,
  ): readonly Band[] | undefined {
    const family = this.#family;
    const { leading, fitting, whole, uncut, extent } = family.widths[request.width];
    const lays = [...family.lays.keys()].slice(0, leading).concat(fitting);
    const inOrder = !uncut && lays.every((lay, i) => lay === i);
    const listed = listFillings(
      {
        capacity: family.length,
        items: lays.map((lay) => (uncut ? { ...this.#items[lay], most: 1 } : this.#items[lay])),
        values: lays.map((lay) => this.#values[lay]),
        least,
        required: whole ? 0 : request.required,
      },
      budget,
      inOrder ? this.#mostWorth : undefined,
    );
    return listed?.map((filling) => {
      const counts = filling.map(([i, copies]) => [lays[i], copies] as const);
      return { box, cuts, extent, part: cutStrip(family, counts, cuts), kept: 0 };
    });
  }
}
