import type { BandBook } from '../master/band-book.js';
import { RoomMaster } from '../master/room-master.js';
import { annealEntropy } from './anneal-entropy.js';
import { BandEntropy, type EntropyModel } from './band-entropy.js';
import { decimateSheets } from './decimate-sheets.js';
import type { SearchGround } from './ground.js';
import { type PlanEntropy, planEntropy } from './plan-entropy.js';
import type { SheetsWithRoom } from './room-search.js';
import { slotsOf } from './slots-of.js';

/** Sheets that decimation leaves open, at least and at most; annealings of these, and their steps. */
const OPEN = { least: 8, most: 20 };
const ROUNDS = 6;
const STEPS = 40_000;
/** What patterns that are hardly expected weigh when one is drawn. */
const LEAST_WEIGHT = 0.01;
/** Models of the entropy that are kept, the first one among them. */
const MODELS = 6;

/**
 * Searches for whole sheets whose bands have much entropy, so that many whole bands fill
 * them: most sheets are settled by decimation, and the last ones by annealing against
 * models of the entropy, each of which comes of the sheets that the one before led to.
 */
export class EntropySearch {
  readonly #ground: SearchGround;
  /** The patterns that are chosen from. */
  readonly book: BandBook;
  readonly #plan: PlanEntropy;
  readonly #entropy: BandEntropy;
  /** By sheet pattern of the plan, its slots, as indices of the plan. */
  readonly #slots: readonly (readonly (readonly [number, number])[])[];
  /** Sheets that were given before. */
  readonly #given = new Set<string>();

  private constructor(ground: SearchGround, book: BandBook, plan: PlanEntropy) {
    this.#ground = ground;
    this.book = book;
    this.#plan = plan;
    this.#entropy = new BandEntropy(book, ground.demand, plan);
    const at = new Map(plan.slots.map((slot, index) => [slot, index]));
    this.#slots = plan.sheets.map((sheet) =>
      book.sheets[sheet].slots.map(([slot, copies]) => [at.get(slot) ?? 0, copies] as const),
    );
  }

  /**
   * @param book patterns to choose from, which does not change any more
   * @param counts by box, how many sheets there are
   * @param worth of each piece in the linear plan
   * @returns undefined where there is hardly any plan of these
   */
  static open(
    ground: SearchGround,
    book: BandBook,
    counts: readonly number[],
    worth: readonly number[],
  ): EntropySearch | undefined {
    const over = () => ground.deadline.left() <= 0;
    const plan = planEntropy({ book, demand: ground.demand, counts, worth, over });
    return plan && new EntropySearch(ground, book, plan);
  }

  /** Other sheets each time; undefined where none were found, or there is no time. */
  async next(random: () => number): Promise<SheetsWithRoom | undefined> {
    const sheets = this.#best(random);
    if (sheets === undefined) return undefined;
    this.#given.add(keyOf(sheets));
    const numbers = new Int32Array(this.book.sheets.length);
    for (const sheet of sheets) numbers[this.#plan.sheets[sheet]]++;
    const { demand, engines, deadline } = this.#ground;
    const master = new RoomMaster({ demand, book: this.book, engines });
    try {
      const room = await master.solve(slotsOf(this.book, numbers), deadline.left());
      return room && { numbers, room: room.room };
    } finally {
      master.close();
    }
  }

  /** For each sheet, its pattern. */
  #best(random: () => number): Int32Array | undefined {
    const { deadline, effort } = this.#ground;
    const over = () => deadline.left() <= 0;
    const left = OPEN.least + Math.floor(random() * (OPEN.most - OPEN.least + 1));
    const { sheets, open, amounts } = decimateSheets(this.#plan, left, random, over);
    const center = this.#entropy.at(this.#countsOf(sheets, amounts), over);
    if (center === undefined) return undefined;
    const draw = this.#drawer(random);
    let start: Int32Array = Int32Array.from([...sheets, ...open.map(draw)]);
    const free = [...start.keys()].slice(sheets.length);
    const met = new Set(this.#given);
    const models: EntropyModel[] = [center];
    let best: { readonly sheets: Int32Array; readonly entropy: number } | undefined;
    for (let round = 0; round < ROUNDS && !over(); round++) {
      const next = annealEntropy({
        models,
        slots: this.#slots,
        start,
        free,
        changes: free.length,
        steps: STEPS,
        draw: (pattern) => draw(this.#plan.boxes[pattern]),
        met: (some) => met.has(keyOf(some)),
        random,
      });
      if (met.has(keyOf(next))) continue;
      met.add(keyOf(next));
      const model = this.#entropy.at(this.#countsOf(next, []), over);
      effort.rounds++;
      if (model === undefined) continue;
      models.push(model);
      if (models.length > MODELS) models.splice(1, 1);
      if (best !== undefined && model.entropy <= best.entropy) continue;
      best = { sheets: next, entropy: model.entropy };
      start = next;
    }
    return best?.sheets;
  }

  /** How many of each slot sheets have, and so many besides of each pattern. */
  #countsOf(sheets: ArrayLike<number>, amounts: readonly number[]): Float64Array {
    const counts = new Float64Array(this.#plan.slots.length);
    const add = (pattern: number, times: number) => {
      for (const [slot, copies] of this.#slots[pattern]) counts[slot] += copies * times;
    };
    for (let i = 0; i < sheets.length; i++) add(sheets[i], 1);
    amounts.forEach((amount, pattern) => {
      if (amount > 0) add(pattern, amount);
    });
    return counts;
  }

  /** Draws patterns of a box, those that are expected more the more often. */
  #drawer(random: () => number): (box: number) => number {
    const { boxes, numbers } = this.#plan;
    const ofBox = new Map<number, { readonly patterns: number[]; readonly sums: number[] }>();
    boxes.forEach((box, pattern) => {
      const entry = ofBox.get(box) ?? { patterns: [], sums: [] };
      ofBox.set(box, entry);
      entry.patterns.push(pattern);
      const weight = Math.sqrt(numbers.amounts[pattern]) + LEAST_WEIGHT;
      entry.sums.push((entry.sums.at(-1) ?? 0) + weight);
    });
    return (box) => {
      const { patterns, sums } = ofBox.get(box) ?? { patterns: [0], sums: [1] };
      const drawn = random() * (sums.at(-1) ?? 0);
      let [low, high] = [0, sums.length - 1];
      while (low < high) {
        const middle = (low + high) >> 1;
        if (sums[middle] < drawn) low = middle + 1;
        else high = middle;
      }
      return patterns[low];
    };
  }
}

function keyOf(sheets: Int32Array): string {
  return sheets.slice().sort().join();
}
