import { cutsInOrder, gaugeSettings } from '../layout/cut-order.js';
import type { CutBox, CuttingRules } from '../pattern/cutting-rules.js';
import type { Cutting, PatternCount } from '../pattern/pattern-count.js';
import { inOrder, patternKey } from '../pattern/pattern-key.js';
import type { Weights } from '../problem.js';

/** What the cutting of a plan takes beside metal. */
export interface Handling {
  /** Different layouts. */
  readonly layouts: number;
  /**
   * Settings of the shear's gauge. Sheets with one layout are cut together, so
   * that it is set once for all of them.
   */
  readonly gaugeSettings: number;
  /** Cuts of all sheets; the trims of their edges, which no plan can save, are not counted. */
  readonly cuts: number;
}

/** Reckons handling up, each pattern once. */
export class HandlingCount {
  readonly #known = new Map<string, { readonly settings: number; readonly cuts: number }>();

  constructor(
    readonly boxes: readonly CutBox[],
    readonly rules: CuttingRules,
    readonly weights: Weights = {},
  ) {}

  /** @param sheets no pattern twice */
  of(sheets: readonly PatternCount<Cutting>[]): Handling {
    let gaugeSettings = 0;
    let cuts = 0;
    for (const sheet of sheets) {
      const each = this.#each(sheet);
      gaugeSettings += each.settings;
      cuts += each.cuts * sheet.count;
    }
    return { layouts: sheets.length, gaugeSettings, cuts };
  }

  /** The weighted sum of them: less is better. */
  score(sheets: readonly PatternCount<Cutting>[]): number {
    const { layouts, gaugeSettings, cuts } = this.of(sheets);
    const { layout = 100, gauge = 10, cut = 1 } = this.weights;
    return layout * layouts + gauge * gaugeSettings + cut * cuts;
  }

  #each({ pattern }: PatternCount<Cutting>): { readonly settings: number; readonly cuts: number } {
    const key = patternKey(pattern);
    const before = this.#known.get(key);
    if (before !== undefined) return before;
    const cuts = cutsInOrder(inOrder(pattern.part), this.boxes[pattern.stockClass], this.rules);
    const each = { settings: gaugeSettings(cuts), cuts: cuts.length };
    this.#known.set(key, each);
    return each;
  }
}
