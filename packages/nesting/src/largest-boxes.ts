import { worthByArea } from './box-solver/worth-by-area.js';
import type { Box } from './pattern/box.js';
import type { PatternPricer, PricedPatterns } from './pattern/pattern-pricer.js';
import type { KeepRule } from './problem.js';

/** Pieces that may lie on boxes, by boxes and ways to lie, which are priced at once: some hundred megabytes. */
const MOST_LAYS = 50_000;

/**
 * The boxes as they are priced: the largest as they are, and those after them with nothing to lie on them where
 * thousands of offcuts would take more time and memory than there is.
 */
export function largestBoxes(boxes: readonly Box[], mostLays = MOST_LAYS): readonly Box[] {
  const bySize = [...boxes.keys()].sort((a, b) => areaOf(boxes[b]) - areaOf(boxes[a]) || a - b);
  const priced = new Set<number>();
  let left = mostLays;
  for (const index of bySize) {
    left -= boxes[index].lays.length;
    if (left < 0) break;
    priced.add(index);
  }
  if (priced.size === boxes.length) return boxes;
  return boxes.map((box, index) => (priced.has(index) ? box : { ...box, lays: [] }));
}

/**
 * A pricer of the largest boxes made to hold for all: of the others the worth is that of their area, which no
 * pattern exceeds, and no pattern is found.
 * @param rule for keeping remnants, if there is one
 */
export function forAllBoxes(
  pricer: PatternPricer,
  boxes: readonly Box[],
  priced: readonly Box[],
  rule: KeepRule | undefined,
): PatternPricer {
  return priced === boxes ? pricer : new LargestPricer(pricer, boxes, priced, rule);
}

/** It lists nothing, since it would not be all. */
class LargestPricer implements Pick<PatternPricer, 'price' | 'atMost'> {
  readonly #pricer: PatternPricer;
  readonly #boxes: readonly Box[];
  readonly #beyond: readonly number[];
  readonly #rule: KeepRule | undefined;

  constructor(
    pricer: PatternPricer,
    boxes: readonly Box[],
    priced: readonly Box[],
    rule: KeepRule | undefined,
  ) {
    this.#pricer = pricer;
    this.#boxes = boxes;
    this.#beyond = [...boxes.keys()].filter((index) => priced[index] !== boxes[index]);
    this.#rule = rule;
  }

  get atMost(): PatternPricer['atMost'] {
    const { atMost } = this.#pricer;
    if (atMost === undefined) return undefined;
    return (values, coin) => {
      const worth = atMost.call(this.#pricer, values, coin);
      return worth && this.#withAreas(worth, values, coin);
    };
  }

  price(values: ArrayLike<number>, coin: number): PricedPatterns {
    const priced = this.#pricer.price(values, coin);
    return {
      patterns: (box) => priced.patterns(box),
      bands: () => priced.bands?.() ?? [],
      worth: this.#withAreas(priced.worth, values, coin),
    };
  }

  #withAreas(worth: readonly number[], values: ArrayLike<number>, coin: number): readonly number[] {
    const all = [...worth];
    for (const index of this.#beyond) {
      all[index] = Math.ceil(worthByArea(this.#boxes[index], values, this.#rule, coin));
    }
    return all;
  }
}

function areaOf({ length, width }: Box): number {
  return length * width;
}
