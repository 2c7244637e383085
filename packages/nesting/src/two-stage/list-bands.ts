import { type ListingBudget, listFillings } from '../pattern/fillings.js';
import type { Band } from '../pattern/pattern-pricer.js';
import { cutStrip } from './cut-strip.js';
import type { Face, StripFamily } from './strip-family.js';

export interface BandListing {
  readonly family: StripFamily;
  /** Where the bands are to lie. */
  readonly face: Face;
  /** Index of their width in the family. */
  readonly width: number;
  /** Copies of each piece that are of use. */
  readonly demand: readonly number[];
  /** One for each piece, at least 0. */
  readonly values: ArrayLike<number>;
  /** They hold a lay from this one of the width's on. */
  readonly required: number;
  /** What they are worth at least. */
  readonly least: number;
}

/**
 * Lists the bands of a width that are worth so much and to which no piece can be added.
 * @returns undefined where the budget runs out
 */
export function listBands(
  { family, face, demand, values, required, least, ...request }: BandListing,
  budget: ListingBudget,
): readonly Band[] | undefined {
  const { box, cuts } = face;
  const width = family.widths[request.width];
  const lays = [...family.lays.keys()].slice(0, width.leading).concat(width.fitting);
  const listed = listFillings(
    {
      capacity: family.length,
      items: lays.map((lay) => ({
        size: family.lays[lay].along,
        most: width.uncut ? 1 : demand[family.lays[lay].piece],
      })),
      values: lays.map((lay) => values[family.lays[lay].piece]),
      least,
      required: width.whole ? 0 : required,
    },
    budget,
  );
  return listed?.map((filling) => {
    const counts = filling.map(([i, copies]) => [lays[i], copies] as const);
    return { box, cuts, extent: width.extent, part: cutStrip(family, counts, cuts), kept: 0 };
  });
}
