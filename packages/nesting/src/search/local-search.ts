import type { BandBook } from '../master/band-book.js';
import type { LinearResult } from '../master/column-generation.js';
import { kindsWanted } from '../master/kinds-wanted.js';
import { seededRandom } from '../random.js';
import { withFirstFit, withinCost } from './complete-plan.js';
import type { SearchGround } from './ground.js';
import { guideOf } from './guide.js';
import type { Incumbent } from './incumbent.js';
import { likelyBook } from './listed-masters.js';
import type { Planned } from './planned.js';
import {
  cutAgain,
  missingWeight,
  type Partial,
  Refiller,
  type RefillGuide,
  refillBySettling,
  refillRest,
} from './refill.js';
import { SheetChoice } from './sheet-choice.js';
import { fewSheets, type LinearPlan, lossesOf, SheetsFirst } from './sheets-first.js';

/** With so many of each kind of piece and so many sheets, sheets are settled before bands. */
const MANY_OF_EACH = 4;
const MANY_SHEETS = 12;
/**
 * Every so often bands are settled first all the same: soon where all sheets cost alike, so
 * that the bound leaves room of up to a sheet; later where it is closer.
 */
const BANDS_FIRST = { alike: { round: 2, every: 3 }, different: { round: 48, every: 48 } };
/** Patterns that are listed for it, and by what share of a sheet they may fall short. */
const MOST_LISTED = 3_000;
const GAP_TO_LIST = 0.5;
/** Steps in vain after which the search for less cost ends, and one that settles bands first. */
const STEPS_IN_VAIN = 60;

/** Local search for plans that cost less than the best so far. */
export class LocalSearch {
  readonly #ground: SearchGround;
  readonly #incumbent: Incumbent;
  readonly #guide: RefillGuide;
  readonly #seed: number;
  readonly #root: LinearResult;
  #sheetsFirst: SheetsFirst | undefined;

  /** @param root the linear plan of the whole problem */
  constructor(ground: SearchGround, incumbent: Incumbent, root: LinearResult, seed: number) {
    this.#ground = ground;
    this.#incumbent = incumbent;
    this.#guide = guideOf(ground, root);
    this.#root = root;
    this.#seed = seed;
  }

  /** Whether sheets can be settled before bands, which many of each piece ask for. */
  get sheetsFirst(): boolean {
    const { pricer, bare } = this.#ground;
    const sheets = sheetsOf(this.#root.answer);
    return manyOfEach(this.#ground, sheets) && pricer.bandsOf !== undefined && bare === undefined;
  }

  /** For each piece, what going without one counts, 1 on average. */
  get losses(): readonly number[] {
    return lossesOf(this.#guide);
  }

  /**
   * Aims for a cost, and searches on what a plan of that cost leaves uncut. Where there
   * are many of each piece, another start that settles sheets first is mostly better.
   * @param taken sheets of a dive to start from; absent to start anew
   * @param steps in vain after which it ends
   */
  async refill(taken: readonly Planned[] | undefined, round: number, steps: number): Promise<void> {
    const incumbent = this.#incumbent;
    const random = seededRandom(this.#seed + round);
    const many = taken === undefined && this.sheetsFirst;
    if (many && !this.#bandsFirst(round)) return this.#planSheetsFirst();
    let target = incumbent.aim(round);
    let partial = this.#within(taken ?? [], target);
    const start = await this.#start(taken, partial.planned, target, random);
    if (start !== undefined && start.missing <= partial.missing) partial = start;
    this.#complete(partial);
    let refiller = new Refiller(this.#ground, this.#guide, target, random);
    const most = many ? STEPS_IN_VAIN : steps;
    for (let vain = 0; vain < most && this.#left() > 0; vain++) {
      if (partial.missing === 0) {
        if (incumbent.met) return;
        target = incumbent.target;
        partial = this.#within(partial.planned, target);
        refiller = new Refiller(this.#ground, this.#guide, target, random);
      }
      const next = await refiller.step(partial);
      if (next.missing < partial.missing) {
        vain = 0;
        this.#complete(next);
      }
      partial = next;
      incumbent.tell('local search');
      if (refiller.exhausted) return;
    }
  }

  /**
   * Frees sheets of the best plan and cuts their pieces again for less.
   * @param most steps in all
   */
  async cutCheaper(round: number, most = Number.POSITIVE_INFINITY): Promise<void> {
    const incumbent = this.#incumbent;
    const random = seededRandom(this.#seed + 1000 + round);
    const choice = new SheetChoice(random, this.#guide.waste);
    let { planned } = incumbent;
    for (let step = 0, vain = 0; planned !== undefined && vain < STEPS_IN_VAIN; step++, vain++) {
      if (step === most || incumbent.met || this.#left() <= 0 || choice.exhausted) return;
      const { cost } = incumbent;
      planned = await cutAgain(this.#ground, planned, choice);
      incumbent.offer(planned);
      if (incumbent.cost < cost) vain = 0;
      incumbent.tell('local search');
    }
  }

  /** Aims for a good plan soon and for one that meets the bound, by turns. */
  async #planSheetsFirst(): Promise<void> {
    this.#sheetsFirst ??= this.#openSheetsFirst();
    const partial = await this.#sheetsFirst.plan();
    if (partial !== undefined) this.#complete(partial);
  }

  #openSheetsFirst(): SheetsFirst {
    const ground = this.#ground;
    const root = this.#root;
    const linear = linearPlan(ground, root);
    const pool = fewSheets(linear) ? patternsSoFar(ground) : likelyPool(ground, root);
    const random = seededRandom(this.#seed);
    return new SheetsFirst(ground, this.#incumbent, this.#guide, pool, linear, random);
  }

  #bandsFirst(round: number): boolean {
    const { classes } = this.#ground;
    const prices = new Set(
      classes.flatMap(({ supplies }) => supplies.map(({ price }) => price)).filter((p) => p > 0),
    );
    const first = BANDS_FIRST[prices.size <= 1 ? 'alike' : 'different'];
    return round >= first.round && (round - first.round) % first.every === 0;
  }

  async #start(
    taken: readonly Planned[] | undefined,
    rest: readonly Planned[],
    target: number,
    random: () => number,
  ): Promise<Partial | undefined> {
    const again = { seeds: [], cutoff: undefined };
    return taken === undefined
      ? refillBySettling(this.#ground, this.#guide, rest, target, random, again)
      : refillRest(this.#ground, this.#guide, rest, target, again);
  }

  /** What a cost allows of a plan, the sheets that waste most left out. */
  #within(planned: readonly Planned[], target: number): Partial {
    const { demand } = this.#ground;
    const { waste, weights } = this.#guide;
    const thrifty = [...planned].sort((a, b) => waste(a.pattern) - waste(b.pattern));
    const kept = withinCost(this.#ground, thrifty, this.#incumbent.measure, target);
    return { planned: kept, missing: missingWeight(demand, kept, weights) };
  }

  /** Offers a plan, what it lacks cut at whatever it costs. */
  #complete({ planned, missing }: Partial): void {
    this.#incumbent.offer(missing === 0 ? planned : withFirstFit(this.#ground, planned));
  }

  #left(): number {
    return this.#ground.deadline.left();
  }
}

/** Whether there are many of each piece, and many sheets. */
export function manyOfEach({ demand }: SearchGround, sheets: number): boolean {
  const pieces = demand.reduce((sum, quantity) => sum + quantity, 0);
  return pieces >= MANY_OF_EACH * kindsWanted(demand) && sheets >= MANY_SHEETS;
}

function linearPlan({ demand, scale }: SearchGround, { bound, answer }: LinearResult): LinearPlan {
  const kinds = [...demand.keys()].filter((piece) => demand[piece] > 0);
  const worth = kinds.reduce((sum, piece) => sum + bound.multipliers.pieces[piece], 0);
  return {
    cost: bound.scaled / scale,
    meanWorth: worth / kinds.length / scale,
    sheets: sheetsOf(answer),
  };
}

function sheetsOf(answer: LinearResult['answer']): number {
  return answer?.sheets.reduce((sum, amount) => sum + amount, 0) ?? 0;
}

/** Likely patterns: listed where that is soon done, or else those that came up. */
function likelyPool(ground: SearchGround, root: LinearResult): BandBook {
  const { scale } = ground;
  const gap = GAP_TO_LIST * Math.max(0, ...root.bound.classCost.map((cost) => cost / scale));
  return likelyBook(ground, root, gap, MOST_LISTED) ?? patternsSoFar(ground);
}

function patternsSoFar(ground: SearchGround): BandBook {
  const { book } = ground;
  const pool = ground.newBook();
  pool.adopt(book, [...book.bands.keys()], [...book.sheets.keys()]);
  return pool;
}
