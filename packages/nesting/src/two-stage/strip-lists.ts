import type { Box } from '../pattern/box.js';
import type { KeepValue } from '../pattern/keep-value.js';
import { type Limits, mayRest, netRest } from '../pattern/limits.js';
import type { Pattern } from '../pattern/part.js';
import type {
  ListedFace,
  ListedRest,
  ListedStrip,
  PricedStrips,
  StripLister,
} from '../pattern/strip-lister.js';
import { BreadthKnapsack, type WidthWorth } from './breadth-knapsack.js';
import { cutStrip } from './cut-strip.js';
import { mayListStrips } from './may-list-strips.js';
import { type Face, type Faces, type StripWidth, stripFaces } from './strip-family.js';
import type { LayCounts } from './strip-knapsack.js';
import { type FilledStrip, StripWorths } from './strip-worths.js';

/** Steps of search for each strip that may be listed. */
const STEPS_PER_STRIP = 1_000;
/** Steps to find one of the best strips of a width. */
const STEPS_TO_FIND = 100_000;

/**
 * Makes the lister of two-stage strips; undefined where strips of every width would be
 * too many, or the order takes more than a few sheets.
 */
export function stripLister(
  boxes: readonly Box[],
  demand: readonly number[],
  limits: Limits,
  keep: KeepValue,
): StripLister | undefined {
  return mayListStrips(boxes, demand) ? new StripLists(boxes, demand, limits, keep) : undefined;
}

interface PricedFace {
  readonly face: Face;
  readonly rests: readonly ListedRest[];
  readonly breadth: BreadthKnapsack;
}

/**
 * Strips of every width, each with every filling. What a strip must be worth is told by
 * the best that can lie beside it: a strip is in no pattern of use where even that comes
 * to too little.
 */
export class StripLists implements StripLister {
  readonly #boxes: readonly Box[];
  readonly #demand: readonly number[];
  readonly #limits: Limits;
  readonly #keep: KeepValue;
  readonly #faces: Faces;
  readonly #worths: readonly StripWorths[];
  /** By face. */
  readonly #rests: readonly (readonly ListedRest[])[];

  constructor(boxes: readonly Box[], demand: readonly number[], limits: Limits, keep: KeepValue) {
    this.#boxes = boxes;
    this.#demand = demand;
    this.#limits = limits;
    this.#keep = keep;
    this.#faces = stripFaces(boxes, limits, 'every');
    this.#worths = this.#faces.families.map(
      (family) => new StripWorths(family, demand, limits, keep),
    );
    this.#rests = this.#faces.faces.map((face) => this.#restsOf(face));
  }

  price(values: ArrayLike<number>, coin: number): PricedStrips {
    for (const worths of this.#worths) worths.solve(values, coin);
    const worth: number[] = this.#boxes.map(() => 0);
    const faces = this.#faces.faces.map((face, index): PricedFace => {
      const rests = this.#rests[index];
      const breadth = new BreadthKnapsack(this.#items(face), rests, face.breadth, coin);
      worth[face.box] = Math.max(worth[face.box], breadth.worth);
      return { face, rests, breadth };
    });
    const patterns: PricedStrips['patterns'] = (box) =>
      faces.flatMap((priced) => {
        const best = priced.face.box === box ? this.#best(priced) : undefined;
        return best === undefined ? [] : [{ pattern: best, worth: worthOf(best, values, coin) }];
      });
    const within: PricedStrips['within'] = (least, gap, most) => {
      const budget = { strips: most, steps: most * STEPS_PER_STRIP };
      const listed: ListedFace[] = [];
      for (const { face, rests, breadth } of faces) {
        const atLeast = least[face.box] - gap;
        const strips = this.#strips(face, breadth, atLeast, budget);
        if (strips === undefined) return undefined;
        const left = rests.filter((rest) => breadth.beforeRest(rest) >= atLeast);
        if (strips.length === 0 || left.length === 0) continue;
        listed.push({ box: face.box, cuts: face.cuts, breadth: face.breadth, strips, rests: left });
      }
      return listed;
    };
    return { worth, patterns, within };
  }

  pattern(face: ListedFace, strips: readonly ListedStrip[]): Pattern | undefined {
    const { kerf, longestCut } = this.#limits;
    const rest = face.breadth - strips.reduce((sum, { extent }) => sum + extent, 0);
    let by = 0;
    let wider = -1;
    if (!mayRest(rest, this.#limits)) {
      wider = strips.findIndex(
        ({ extent, stretches }) => stretches && extent + rest - kerf <= longestCut,
      );
      // Where the kerf may take a little of what is too narrow, no such sheet is looked for.
      if (wider < 0 || kerf > 0) return undefined;
      by = rest;
    }
    const counts = new Map<number, number>();
    for (const strip of strips) {
      for (const [piece, copies] of strip.counts) {
        counts.set(piece, (counts.get(piece) ?? 0) + copies);
      }
    }
    const kept = strips.reduce((sum, strip) => sum + strip.kept, 0);
    const length =
      face.cuts === 'along' ? this.#boxes[face.box].length : this.#boxes[face.box].width;
    return {
      stockClass: face.box,
      part: {
        kind: 'split',
        cuts: face.cuts,
        parts: strips.map(({ extent, part }, index) => {
          return { extent: index === wider ? extent + by : extent, part };
        }),
      },
      counts: [...counts].sort((a, b) => a[0] - b[0]),
      kept: kept + this.#keep(length - kerf, netRest(rest - by, this.#limits)),
    };
  }

  #strips(
    face: Face,
    breadth: BreadthKnapsack,
    atLeast: number,
    budget: { strips: number; steps: number },
  ): readonly ListedStrip[] | undefined {
    const family = this.#faces.families[face.family];
    const worths = this.#worths[face.family];
    const strips: ListedStrip[] = [];
    /** The most that remnants of narrower strips with the same pieces are worth. */
    const known = new Map<string, { kept: number; stretching: number }>();
    for (const [w, width] of family.widths.entries()) {
      if (width.stretches || !this.#usable(width, face)) continue;
      const [stiff, slack] = [false, true].map((stretches) =>
        breadth.beside(width.extent, stretches),
      );
      const fillings = worths.fillings(w, atLeast - slack, budget);
      if (fillings === undefined) return undefined;
      for (const filling of fillings) {
        const { lays, kept, worth } = filling;
        const stretches = this.#stretches(width, lays);
        if (!stretches && worth + stiff < atLeast) continue;
        const key = lays.join(' ');
        const before = known.get(key) ?? { kept: -1, stretching: -1 };
        if (kept <= (stretches ? before.stretching : before.kept)) continue;
        known.set(key, {
          kept: Math.max(before.kept, kept),
          stretching: stretches ? kept : before.stretching,
        });
        const strip = this.#strip(face, width, filling);
        if (strip.counts.some(([piece, copies]) => copies > this.#demand[piece])) continue;
        if (--budget.strips < 0) return undefined;
        strips.push(strip);
      }
    }
    return strips;
  }

  #strip(face: Face, width: StripWidth, { lays, kept }: FilledStrip): ListedStrip {
    const family = this.#faces.families[face.family];
    const { box, cuts } = face;
    const counts = new Map<number, number>();
    for (const [lay, copies] of lays) {
      const { piece } = family.lays[lay];
      counts.set(piece, (counts.get(piece) ?? 0) + copies);
    }
    const part = cutStrip(family, lays, cuts);
    const { extent } = width;
    const stretches = this.#stretches(width, lays);
    return { box, cuts, extent, part, kept, counts: [...counts], stretches };
  }

  /** A pattern of the most worth, if the shear can cut it. */
  #best({ face, rests, breadth }: PricedFace): Pattern | undefined {
    const { widths } = this.#faces.families[face.family];
    const strips: ListedStrip[] = [];
    for (const { width, worth } of breadth.best()) {
      const budget = { steps: STEPS_TO_FIND };
      const [filling] = this.#worths[face.family].fillings(width, worth, budget, 1) ?? [];
      if (filling === undefined) return undefined;
      strips.push(this.#strip(face, widths[width], filling));
    }
    if (strips.length === 0) return undefined;
    return this.pattern({ ...face, strips, rests }, strips);
  }

  /** Where a kerf may take some of a rest, any strip counts as one that stretches: no plan is lost by that. */
  #stretches({ leading, uncut }: StripWidth, lays: LayCounts): boolean {
    const { kerf, narrowest } = this.#limits;
    return narrowest <= 1 || kerf > 0 || (!uncut && lays.every(([lay]) => lay < leading));
  }

  #usable({ extent }: StripWidth, { breadth }: Face): boolean {
    const { kerf, narrowest } = this.#limits;
    return extent <= breadth && (extent - kerf >= narrowest || extent === breadth);
  }

  /**
   * What the best strips of every width are worth on a face. Of those that stretch, a wider
   * one is of use only where it is worth more, since the narrower can take its place; of the
   * others, where it is worth more than one of the same width that stretches.
   */
  #items(face: Face): readonly WidthWorth[] {
    const { kerf, narrowest } = this.#limits;
    const worths = this.#worths[face.family];
    let most = 0;
    const items: WidthWorth[] = [];
    const { widths } = this.#faces.families[face.family];
    for (const [w, width] of widths.entries()) {
      const worth = worths.worth(w);
      if (worth <= most || !this.#usable(width, face)) continue;
      // As in #stretches; those that do by themselves are apart.
      const stretches = width.stretches || narrowest <= 1 || kerf > 0;
      const own = worths.worth(w + 1);
      if (!stretches && widths[w + 1]?.extent === width.extent && own >= worth) continue;
      items.push({ width: w, extent: width.extent, worth, stretches });
      if (stretches) most = worth;
    }
    return items;
  }

  /** What may be left beside strips, the least of every worth. */
  #restsOf(face: Face): readonly ListedRest[] {
    const { length, widths } = this.#faces.families[face.family];
    const { kerf, narrowest } = this.#limits;
    const rests: ListedRest[] = [{ extent: 0, kept: 0 }];
    if (widths.some(({ whole }) => whole)) return rests;
    if (narrowest > 1) rests.push({ extent: kerf + narrowest, kept: 0 });
    let most = 0;
    for (let extent = 1; extent <= face.breadth; extent++) {
      if (!mayRest(extent, this.#limits)) continue;
      const kept = this.#keep(length - kerf, netRest(extent, this.#limits));
      if (kept <= most) continue;
      most = kept;
      rests.push({ extent, kept });
    }
    return rests;
  }
}

function worthOf({ counts, kept }: Pattern, values: ArrayLike<number>, coin: number): number {
  return counts.reduce((sum, [piece, copies]) => sum + values[piece] * copies, coin * kept);
}
