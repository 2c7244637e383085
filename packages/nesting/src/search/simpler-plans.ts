import { shareOf } from '../deadline.js';
import { boundBy } from '../master/column-generation.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import { manyOfEach } from './local-search.js';

/** Share of the time left in which a plan is made as if remnants were worth nothing. */
const SHARE_WITHOUT_VALUE = 0.5;
/** The same in which plans are made in two stages, where patterns of more turn out to take long to price. */
const SHARE_IN_TWO_STAGES = 0.5;
/** The same where that is known before. */
const SHARE_TO_BEGIN_IN_TWO_STAGES = 0.4;

/**
 * Plans of a simpler problem, which are plans of the problem itself: that is how a good
 * one is had long before the linear plan of all patterns.
 */
export class SimplerPlans {
  readonly #ground: SearchGround;
  readonly #incumbent: Incumbent;
  #wasInTwoStages = false;

  constructor(ground: SearchGround, incumbent: Incumbent) {
    this.#ground = ground;
    this.#incumbent = incumbent;
  }

  /** Whether there are many of each piece, and many sheets by the plan that is known, if any. */
  get many(): boolean {
    const { planned } = this.#incumbent;
    const sheets = planned?.reduce((sum, { count }) => sum + count, 0);
    return manyOfEach(this.#ground, sheets ?? Number.POSITIVE_INFINITY);
  }

  /** What is simpler by the look of the problem. */
  async begin(): Promise<void> {
    if (this.many && this.#ground.deadline.left() > 0) await this.#withoutValue();
    if (this.#ground.rough !== undefined) await this.#inTwoStages(SHARE_TO_BEGIN_IN_TWO_STAGES);
  }

  /** In two stages, since patterns of more turn out to take long to price. */
  async inTwoStages(): Promise<void> {
    await this.#inTwoStages(SHARE_IN_TWO_STAGES);
  }

  /**
   * Takes plans made as if remnants were worth nothing, and learns the patterns of the best. What pieces
   * are worth in them makes a first bound, soon to be had where the linear plan may take all the time.
   */
  async #withoutValue(): Promise<void> {
    const { withoutValue, book, deadline } = this.#ground;
    const until = shareOf(deadline, SHARE_WITHOUT_VALUE);
    const multipliers = await withoutValue?.plan(until, (better) => {
      this.#incumbent.offer(better);
      this.#incumbent.tell('local search');
    });
    for (const { pattern } of this.#incumbent.planned ?? []) book.addPattern(pattern);
    if (multipliers === undefined || deadline.left() <= 0) return;
    const pricer = this.#ground.rough?.pricer ?? this.#ground.pricer;
    this.#incumbent.raise(boundBy({ ...this.#ground, pricer }, multipliers).scaled);
  }

  /** Takes plans made with all stock cut in two stages, and learns the patterns that came up; but once. */
  async #inTwoStages(share: number): Promise<void> {
    const { inTwoStages, withoutValue, book, deadline } = this.#ground;
    if (inTwoStages === undefined || this.#wasInTwoStages || deadline.left() <= 0) return;
    // A plan without value was made already, of all kinds of patterns.
    if (withoutValue !== undefined && this.many) return;
    this.#wasInTwoStages = true;
    const seen = await inTwoStages(shareOf(deadline, share), (better) => {
      this.#incumbent.offer(better);
      this.#incumbent.tell('local search');
    });
    book.adopt(seen, [...seen.bands.keys()], [...seen.sheets.keys()]);
  }
}
