import { type Bed, cutUpOnce } from '../pattern/cut-up.js';
import type { CutBox, CuttingRules } from '../pattern/cutting-rules.js';
import { keptValue } from '../pattern/kept-value.js';
import { canMake } from '../pattern/legal.js';
import type { Part } from '../pattern/part.js';

/** What a pattern is worth beside its pieces. */
export interface Appraisal {
  /** Whether it fits and every cut can be made. */
  readonly legal: boolean;
  /** Coins that its remnants are worth in the rack. */
  readonly kept: number;
  /** Sum of the squares of the remnants' areas: more where the same metal is left in one piece. */
  readonly wholeness: number;
}

/**
 * Appraises patterns that are much alike: what they have in common is reckoned
 * once, as long as it is the same object.
 */
export class Appraiser {
  readonly #known = new WeakMap<Part, Map<string, Appraisal>>();

  constructor(
    readonly box: CutBox,
    readonly rules: CuttingRules,
  ) {}

  appraise(part: Part): Appraisal {
    const { firstCut } = this.rules;
    const { length, width } = this.box;
    const at = { x: 0, y: 0, length, width };
    const whole = this.#appraise({ part, at, stage: 1, around: undefined });
    const firstRight = part.kind === 'lay' || firstCut === 'either' || part.cuts === firstCut;
    return { ...whole, legal: whole.legal && firstRight };
  }

  #appraise(bed: Bed): Appraisal {
    const { part, at, stage, around } = bed;
    const known = this.#known.get(part) ?? new Map<string, Appraisal>();
    this.#known.set(part, known);
    const key = `${at.length} ${at.width} ${stage} ${around}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const { rules, box } = this;
    const { kerf } = rules.limits;
    let legal = true;
    let kept = 0;
    let wholeness = 0;
    const inner = cutUpOnce(bed, rules, {
      cut: (cut) => {
        legal &&= canMake(cut, rules);
      },
      remnant: ({ length, width }) => {
        kept += keptValue(length - kerf, width - kerf, box.keep);
        wholeness += (length * width) ** 2;
      },
    });
    if (inner === undefined) legal = false;
    for (const each of inner ?? []) {
      const appraisal = this.#appraise(each);
      legal &&= appraisal.legal;
      kept += appraisal.kept;
      wholeness += appraisal.wholeness;
    }
    const appraisal = { legal, kept, wholeness };
    known.set(key, appraisal);
    return appraisal;
  }
}
