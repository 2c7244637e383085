import { keepValue } from './keep-value.test.support.js';
import { decoded, type Lay, layable } from './lays.test.support.js';
import type { CuttingProblem, Rolling, Shear, Stock } from './problem.js';

/** What one stock can yield: so many of each piece, and remnants worth at most `kept` coins. */
export interface Yield {
  /** One for each piece of the problem, none above its quantity. */
  readonly counts: readonly number[];
  readonly kept: number;
}

/**
 * Every combination of pieces that one stock can yield, by trying every cut at
 * every tick, with the most that the remnants beside it can be worth. It shares
 * nothing with the planner but the types, keeps to the letter of what `Shear`
 * and `Cut` say, and is meant for stock of a dozen ticks and a few pieces.
 *
 * Spares are left out: a spare that is not cut leaves its metal in the rack, so
 * they never make a plan cheaper.
 */
export function everyCutting(problem: CuttingProblem, stock: Stock): readonly Yield[] {
  const rectangle = trimmed(stock, problem.shear);
  if (rectangle === undefined) return [];
  const { lays, sizes } = layable(problem, stock);
  const bench = new Bench(problem, stock, lays, sizes);
  const found = bench.cutUp(rectangle.length, rectangle.width);
  return found.flatMap((kept, code) =>
    kept === NOT_SEEN ? [] : [{ counts: decoded(code, sizes), kept }],
  );
}

/** Most coins of remnants, at the code of each combination of pieces. */
type Found = number[];
const NOT_SEEN = -1;

/** What a part of a rectangle can yield. */
type Within = (length: number, width: number) => Found;

/** What is left of the stock once its edges are trimmed; undefined where the shear cannot trim it. */
function trimmed(stock: Stock, shear: Shear): { length: number; width: number } | undefined {
  const trim = stock.kind === 'sheet' ? (shear.trim ?? 0) : 0;
  if (trim === 0) return stock;
  const longest = shear.longestCut ?? Number.POSITIVE_INFINITY;
  const [length, width] = [stock.length - 2 * trim, stock.width - 2 * trim];
  // The ends come off first, by cuts over the whole width; the sides are shorter then.
  if (length < 1 || width < 1 || stock.width > longest || length > longest) return undefined;
  return { length, width };
}

/** Cuts rectangles of one stock in every way that the shear allows. */
class Bench {
  readonly #longest: number;
  readonly #narrowest: number;
  readonly #kerf: number;
  /** Of two combinations, at `a * combinations + b`: both together, or undefined if too many. */
  readonly #together: (number | undefined)[] = [];
  readonly #combinations: number;
  readonly #known = new Map<string, Found>();

  constructor(
    private readonly problem: CuttingProblem,
    private readonly stock: Stock,
    private readonly lays: readonly Lay[],
    sizes: readonly number[],
  ) {
    const { shear } = problem;
    this.#longest = shear.longestCut ?? Number.POSITIVE_INFINITY;
    this.#narrowest = shear.narrowestStrip ?? 0;
    this.#kerf = shear.kerf ?? 0;
    this.#combinations = sizes.reduce((product, size) => product * size, 1);
    const counts = Array.from({ length: this.#combinations }, (_, code) => decoded(code, sizes));
    for (const [a, left] of counts.entries()) {
      for (const [b, right] of counts.entries()) {
        const few = left.every((count, i) => count + right[i] < sizes[i]);
        this.#together.push(few ? a + b : undefined);
      }
    }
  }

  /** All that the whole stock can yield, once its edges are trimmed. */
  cutUp(length: number, width: number): Found {
    const { firstCut, stages = 2 } = this.problem.shear;
    const ways = (['along', 'across'] as const).filter(
      (runs) => firstCut === 'either' || firstCut === runs,
    );
    const found = this.#uncut(length, width);
    // The whole counts as one strip of either direction, so nothing binds the first free cut.
    if (stages === 'free') return this.#freely(length, width);
    for (const runs of ways) better(found, this.#inStages(length, width, runs, stages));
    return found;
  }

  /** Free guillotine: any cut in any rectangle. */
  #freely(length: number, width: number): Found {
    return this.#once(`${length} x ${width}`, () => {
      const found = this.#uncut(length, width);
      const freely: Within = (l, w) => this.#freely(l, w);
      this.#exact(found, length, width);
      for (const runs of ['along', 'across'] as const) {
        this.#divide(found, length, width, runs, freely, freely);
      }
      return found;
    });
  }

  /**
   * A rectangle in which cuts of one stage may run `runs`, then `left - 1` more
   * stages, each square to the one before, and after the last the trim to size.
   * Each cut of a stage frees what lies before it for the next stage; what lies
   * beyond it is cut on.
   */
  #inStages(length: number, width: number, runs: Rolling, left: number): Found {
    return this.#once(`${length} x ${width} ${runs} ${left}`, () => {
      if (left === 0) return this.#trimToSize(length, width, runs);
      const next: Within = (l, w) => this.#inStages(l, w, square(runs), left - 1);
      const same: Within = (l, w) => this.#inStages(l, w, runs, left);
      const found = [...next(length, width)];
      this.#divide(found, length, width, runs, next, same);
      return found;
    });
  }

  /** The last trim: it frees one piece, and what it takes off is cut no more. */
  #trimToSize(length: number, width: number, runs: Rolling): Found {
    const found = this.#uncut(length, width);
    this.#exact(found, length, width);
    const [extent, span] = runs === 'along' ? [width, length] : [length, width];
    for (const [near, far] of this.#divisions(extent, span)) {
      for (const lay of this.lays) {
        const [across, along] =
          runs === 'along' ? [lay.width, lay.length] : [lay.length, lay.width];
        if (across !== near || along !== span) continue;
        const kept = far === 0 ? 0 : keepValue(this.problem, this.stock, far, span);
        found[lay.code] = Math.max(found[lay.code], kept);
      }
    }
    return found;
  }

  /** The rectangle as a remnant. */
  #uncut(length: number, width: number): Found {
    const found: Found = new Array(this.#combinations).fill(NOT_SEEN);
    found[0] = keepValue(this.problem, this.stock, length, width);
    return found;
  }

  /** The rectangle as a piece, where one is just so large. */
  #exact(found: Found, length: number, width: number): void {
    for (const lay of this.lays) {
      if (lay.length !== length || lay.width !== width) continue;
      found[lay.code] = Math.max(found[lay.code], 0);
    }
  }

  /** Every cut that runs one way, with everything that the two parts can yield. */
  #divide(
    found: Found,
    length: number,
    width: number,
    runs: Rolling,
    before: Within,
    beyond: Within,
  ): void {
    const level = runs === 'along';
    const [extent, span] = level ? [width, length] : [length, width];
    for (const [near, far] of this.#divisions(extent, span)) {
      const first = level ? before(length, near) : before(near, width);
      if (far === 0) better(found, first);
      else this.#both(found, first, level ? beyond(length, far) : beyond(far, width));
    }
  }

  /**
   * The two parts of every cut that the shear can make; 0 where the kerf leaves
   * nothing of the far one.
   * @param extent of the rectangle square to the cut
   * @param span of the rectangle along the cut, which is the length of the cut
   */
  #divisions(extent: number, span: number): readonly (readonly [number, number])[] {
    const divisions: [number, number][] = [];
    if (span > this.#longest) return divisions;
    for (let near = 1; near < extent; near++) {
      const far = Math.max(0, extent - near - this.#kerf);
      if (near < this.#narrowest || (far > 0 && far < this.#narrowest)) continue;
      divisions.push([near, far]);
    }
    return divisions;
  }

  #both(found: Found, near: Found, far: Found): void {
    for (const [a, keptNear] of near.entries()) {
      if (keptNear === NOT_SEEN) continue;
      for (const [b, keptFar] of far.entries()) {
        const sum = this.#together[a * this.#combinations + b];
        if (keptFar === NOT_SEEN || sum === undefined) continue;
        found[sum] = Math.max(found[sum], keptNear + keptFar);
      }
    }
  }

  #once(key: string, find: () => Found): Found {
    const known = this.#known.get(key) ?? find();
    this.#known.set(key, known);
    return known;
  }
}

function square(runs: Rolling): Rolling {
  return runs === 'along' ? 'across' : 'along';
}

function better(found: Found, other: Found): void {
  for (const [code, kept] of other.entries()) {
    found[code] = Math.max(found[code], kept);
  }
}
