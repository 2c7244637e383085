import { listFillings } from '../pattern/fillings.js';
import type { Band, PatternList, PatternPricer, SheetDivision } from '../pattern/pattern-pricer.js';
import { BandLister } from './band-lister.js';
import { type Faces, stripsOfUse } from './strip-family.js';
import type { StripKnapsack } from './strip-knapsack.js';

/** Steps of search for each pattern that may be listed. */
const STEPS_PER_PATTERN = 200;

/**
 * Lists two-stage patterns and their bands by what they are worth, where remnants are worth nothing
 * and no strip may be too narrow; see `PatternPricer`.
 */
export class TwoStageLister implements Required<Pick<PatternPricer, 'within' | 'bandsOf'>> {
  readonly #faces: Faces;
  /** By family. */
  readonly #strips: readonly StripKnapsack[];
  readonly #demand: readonly number[];
  /** What listed bands last, and of what. */
  #lastLister:
    | { readonly family: number; readonly values: Float64Array; readonly lister: BandLister }
    | undefined;

  /**
   * @param strips solved anew when patterns are listed
   * @param demand copies of each piece that are of use
   */
  constructor(faces: Faces, strips: readonly StripKnapsack[], demand: readonly number[]) {
    this.#faces = faces;
    this.#strips = strips;
    this.#demand = demand;
  }

  within(
    values: ArrayLike<number>,
    least: readonly number[],
    gap: number,
    most: number,
  ): PatternList | undefined {
    const { families, faces } = this.#faces;
    const budget = { fillings: most, steps: most * STEPS_PER_PATTERN };
    families.forEach((family, f) => {
      this.#strips[f].solve(
        family.lays.map((lay) => values[lay.piece]),
        0,
      );
    });
    const bands: Band[] = [];
    for (const [f, family] of families.entries()) {
      const at = faces.find((face) => face.family === f);
      if (at === undefined) continue;
      const lister = new BandLister(family, this.#demand, values);
      for (const w of family.widths.keys()) {
        const required = family.widths[w].leading;
        const atLeast = this.#strips[f].worth(w) - gap;
        const listed = lister.list({ face: at, width: w, required, least: atLeast }, budget);
        if (listed === undefined) return undefined;
        for (const band of listed) bands.push(band);
      }
    }
    const sheets: SheetDivision[] = [];
    for (const face of faces) {
      const { widths } = families[face.family];
      const uses = stripsOfUse(families[face.family], this.#demand, 'needed');
      const listed = listFillings(
        {
          capacity: face.breadth,
          items: widths.map(({ extent }, w) => ({ size: extent, most: uses[w] })),
          values: widths.map((_, w) => this.#strips[face.family].worth(w)),
          least: least[face.box] - gap,
          required: 0,
        },
        budget,
      );
      if (listed === undefined) return undefined;
      for (const filling of listed) {
        const extents = filling.map(([w, count]) => [widths[w].extent, count] as const);
        sheets.push({ box: face.box, cuts: face.cuts, extents });
      }
    }
    return { bands, sheets };
  }

  bandsOf(
    values: ArrayLike<number>,
    at: Omit<Band, 'part' | 'kept'>,
    beyond: number,
    least: number,
    most: number,
  ): readonly Band[] | undefined {
    const face = this.#faces.faces.find(({ box, cuts }) => box === at.box && cuts === at.cuts);
    if (face === undefined) return [];
    const family = this.#faces.families[face.family];
    const { widths, lays } = family;
    const width = widths.findIndex(({ extent }) => extent === at.extent);
    if (width < 0) return [];
    const { leading } = widths[width];
    const wider = lays.slice(0, leading).findIndex(({ across }) => across > beyond);
    const required = wider < 0 ? leading : wider;
    const budget = { fillings: most, steps: most * STEPS_PER_PATTERN };
    return this.#listerOf(face.family, values).list({ face, width, required, least }, budget);
  }

  /** The last one as long as the values are the same: bands of a slot are asked for again where they were too many. */
  #listerOf(family: number, values: ArrayLike<number>): BandLister {
    const last = this.#lastLister;
    if (last?.family === family && sameNumbers(last.values, values)) return last.lister;
    const lister = new BandLister(this.#faces.families[family], this.#demand, values);
    this.#lastLister = { family, values: Float64Array.from(values), lister };
    return lister;
  }
}

function sameNumbers(one: Float64Array, other: ArrayLike<number>): boolean {
  return one.length === other.length && one.every((number, i) => number === other[i]);
}
