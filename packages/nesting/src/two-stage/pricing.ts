import type { CuttingProblem } from '../problem.js';
import { LayeredKnapsack } from './layered-knapsack.js';
import { type CutPattern, narrowed, type StripPattern } from './patterns.js';
import type { Face, Faces } from './strip-families.js';

/** The best patterns for some values of the pieces. */
export interface Priced {
  /** For each strip family and width: the most that a strip can be worth. */
  readonly stripWorth: readonly Float64Array[];
  /** For each face: the most that a sheet can be worth. */
  readonly faceWorth: readonly number[];
  strip(family: number, width: number): StripPattern;
  /** A pattern worth `faceWorth[face]`. */
  cut(face: number): CutPattern;
}

/**
 * Prices two-stage patterns: given a value for each piece, finds for every
 * face the pattern whose pieces are worth most. First the strips of every
 * width of a family in one pass, then the sheet as a knapsack of strips
 * (Gilmore and Gomory 1965). The best worth over all feasible patterns is never
 * understated: a piece may be counted once more in another strip of the same
 * sheet than is in demand, which only relaxes the bound.
 */
export class Pricing {
  readonly #faces: Faces;
  readonly #strips: readonly LayeredKnapsack[];
  readonly #sheets: readonly LayeredKnapsack[];

  constructor(problem: CuttingProblem, faces: Faces) {
    this.#faces = faces;
    this.#strips = faces.families.map(
      (family) =>
        new LayeredKnapsack(
          family.length,
          family.lays.map((lay) => ({
            size: lay.along,
            most: problem.pieces[lay.piece].quantity,
          })),
        ),
    );
    this.#sheets = faces.faces.map(
      (face) => new LayeredKnapsack(face.breadth, stripItems(problem, faces, face)),
    );
  }

  /** @param values one for each piece, at least 0 */
  price(values: ArrayLike<number>): Priced {
    const { families, faces } = this.#faces;
    const stripWorth = families.map((family, index) => {
      const knapsack = this.#strips[index];
      knapsack.solve(family.lays.map((lay) => values[lay.piece]));
      return Float64Array.from(family.fitting, (fitting) => knapsack.worth(fitting));
    });
    const faceWorth = faces.map((face, index) => {
      const knapsack = this.#sheets[index];
      knapsack.solve(stripWorth[face.family]);
      return knapsack.worth(families[face.family].widths.length);
    });
    const strip = (family: number, width: number): StripPattern =>
      narrowed(families[family], {
        family,
        width,
        lays: this.#strips[family].counts(families[family].fitting[width]),
      });
    const cut = (index: number): CutPattern => {
      const face = faces[index];
      const widths = this.#sheets[index].counts(families[face.family].widths.length);
      return {
        face: index,
        strips: widths.map(([width, count]) => [strip(face.family, width), count] as const),
      };
    };
    return { stripWorth, faceWorth, strip, cut };
  }
}

/**
 * How often a width can be of use on one sheet: a strip of exactly that width
 * holds at least one piece lying so.
 */
export function stripItems(problem: CuttingProblem, faces: Faces, face: Face) {
  const family = faces.families[face.family];
  return family.widths.map((width, index) => {
    const first = index === 0 ? 0 : family.fitting[index - 1];
    const exact = family.lays.slice(first, family.fitting[index]);
    const most = exact.reduce((sum, lay) => sum + problem.pieces[lay.piece].quantity, 0);
    return { size: width, most };
  });
}
