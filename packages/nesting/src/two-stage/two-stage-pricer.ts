import type { Box } from '../pattern/box.js';
import type { KeepValue } from '../pattern/keep-value.js';
import { type Limits, netRest } from '../pattern/limits.js';
import type { Pattern, SplitPart } from '../pattern/part.js';
import type {
  Band,
  BandOffer,
  PatternList,
  PatternPricer,
  PricedPatterns,
} from '../pattern/pattern-pricer.js';
import type { Rolling } from '../problem.js';
import { cutStrip } from './cut-strip.js';
import { knownFaces } from './known-faces.js';
import { EVERY_TICK } from './measure.js';
import { SheetKnapsack } from './sheet-knapsack.js';
import { type Faces, type StripFamily, stripsOfUse, type TriedWidths } from './strip-family.js';
import { type LayCounts, StripKnapsack } from './strip-knapsack.js';
import { TwoStageLister } from './two-stage-lister.js';

/**
 * With so many lays at places of strips in all, remnants beside pieces are minded in some widths only,
 * so that pricing takes no more than a second or so.
 */
const MOST_STEPS = 4_000_000_000;

/**
 * Prices two-stage patterns with a last trim: strips sheared across the stock in
 * either direction, cut to length, and trimmed to width where narrower than
 * their strip. First the strips of every width of a family in one pass, then
 * the sheet as a knapsack of strips (Gilmore and Gomory 1965).
 *
 * A strip is as wide as its widest piece, unless slivers forbid that. A piece
 * may be counted once more in another strip of the same sheet than is in demand,
 * which only relaxes the bound.
 */
export class TwoStagePricer implements PatternPricer {
  readonly #faces: Faces;
  readonly #limits: Limits;
  readonly #keep: KeepValue | undefined;
  readonly #strips: readonly StripKnapsack[];
  readonly #sheets: readonly SheetKnapsack[];
  readonly #boxes: readonly Box[];
  readonly #lister: TwoStageLister | undefined;

  /**
   * @param demand copies of each piece that are of use
   * @param keep absent where remnants have no value
   * @param tried strips; its worth is exact where they are those that the value of remnants demands
   * @param measure along strips and across them; no piece may be less than a step of it
   */
  constructor(
    boxes: readonly Box[],
    demand: readonly number[],
    limits: Limits,
    keep: KeepValue | undefined,
    tried: TriedWidths = 'needed',
    measure = EVERY_TICK,
  ) {
    this.#boxes = boxes;
    this.#limits = limits;
    this.#keep = keep;
    this.#faces = knownFaces(boxes, limits, tried);
    const { families, faces } = this.#faces;
    const steps = families.reduce(
      (sum, { length, lays, widths }) =>
        sum + (length / measure.step) * lays.length * widths.length,
      0,
    );
    const trimmedEvery = tried === 'every' ? 1 : Math.max(1, Math.ceil(steps / MOST_STEPS));
    this.#strips = families.map((family) => {
      const most = family.lays.map((lay) => demand[lay.piece]);
      return new StripKnapsack(family, most, limits, keep, trimmedEvery, measure);
    });
    this.#sheets = faces.map((face) => {
      const { length, widths, ...family } = families[face.family];
      const most = stripsOfUse({ length, widths, ...family }, demand, tried);
      return new SheetKnapsack(face.breadth, length, widths, most, limits, keep, measure);
    });
    // What falls short of the best is only known where neither remnants nor slivers count.
    const mayList = keep === undefined && limits.narrowest <= 1 && measure.step === 1;
    this.#lister = mayList ? new TwoStageLister(this.#faces, this.#strips, demand) : undefined;
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const { families, faces } = this.#faces;
    families.forEach((family, f) => {
      this.#strips[f].solve(
        family.lays.map((lay) => values[lay.piece]),
        coin,
      );
    });
    const faceWorth = faces.map((face, index) => {
      const strips = this.#strips[face.family];
      return this.#sheets[index].solve((width) => strips.worth(width), coin);
    });
    const best: number[] = this.#boxes.map(() => -1);
    faces.forEach((face, index) => {
      if (faceWorth[index] > 0 && faceWorth[index] > (faceWorth[best[face.box]] ?? 0)) {
        best[face.box] = index;
      }
    });
    return {
      worth: best.map((face) => faceWorth[face] ?? 0),
      patterns: (box) =>
        faces.flatMap((face, index) => {
          const pattern =
            face.box === box && faceWorth[index] > 0 ? this.#pattern(index) : undefined;
          return pattern === undefined ? [] : [{ pattern, worth: faceWorth[index] }];
        }),
      bands: () => this.#bands(),
    };
  }

  within(...asked: Parameters<TwoStageLister['within']>): PatternList | undefined {
    return this.#lister?.within(...asked);
  }

  bandsOf(...asked: Parameters<TwoStageLister['bandsOf']>): readonly Band[] | undefined {
    return this.#lister?.bandsOf(...asked);
  }

  #bands(): readonly BandOffer[] {
    const { families, faces } = this.#faces;
    return faces.flatMap((face, index) => {
      if (faces.some((other, i) => i < index && sameStrips(face, other))) return [];
      const family = families[face.family];
      return family.widths.flatMap((width, w) => {
        const worth = this.#strips[face.family].worth(w);
        if (width.extent > face.breadth || worth <= 0) return [];
        const at = { box: face.box, cuts: face.cuts, extent: width.extent };
        const make = () => {
          const lays = this.#strips[face.family].counts(w);
          const part = cutStrip(family, lays, face.cuts);
          return { ...at, part, kept: this.#keptInStrip(family, lays, width.extent) };
        };
        return [{ ...at, worth, make }];
      });
    });
  }

  #pattern(index: number): Pattern | undefined {
    const filling = this.#sheets[index].filling();
    if (filling === undefined) return undefined;
    const face = this.#faces.faces[index];
    const family = this.#faces.families[face.family];
    const parts: SplitPart['parts'][number][] = [];
    const counts = new Map<number, number>();
    let kept = 0;
    let filled = 0;
    for (const [w, strips] of filling.widths) {
      const lays = this.#strips[face.family].counts(w);
      const part = cutStrip(family, lays, face.cuts);
      for (let copy = 0; copy < strips; copy++) {
        const by = w === filling.widened && copy === 0 ? filling.by : 0;
        const extent = family.widths[w].extent + by;
        parts.push({ extent, part });
        filled += extent;
        kept += this.#keptInStrip(family, lays, extent);
      }
      for (const [lay, copies] of lays) {
        const { piece } = family.lays[lay];
        counts.set(piece, (counts.get(piece) ?? 0) + copies * strips);
      }
    }
    kept +=
      this.#keep?.(
        family.length - this.#limits.kerf,
        netRest(face.breadth - filled, this.#limits),
      ) ?? 0;
    return {
      stockClass: face.box,
      part: { kind: 'split', cuts: face.cuts, parts },
      counts: [...counts].sort((a, b) => a[0] - b[0]),
      kept,
    };
  }

  #keptInStrip(family: StripFamily, lays: LayCounts, extent: number): number {
    if (this.#keep === undefined) return 0;
    const { kerf } = this.#limits;
    let kept = 0;
    let filled = 0;
    for (const [lay, copies] of lays) {
      const { along, across } = family.lays[lay];
      filled += along * copies;
      kept += copies * this.#keep(along - kerf, netRest(extent - across, this.#limits));
    }
    return kept + this.#keep(netRest(family.length - filled, this.#limits), extent - kerf);
  }
}

function sameStrips(
  one: { readonly family: number; readonly cuts: Rolling },
  other: { readonly family: number; readonly cuts: Rolling },
): boolean {
  return one.family === other.family;
}
