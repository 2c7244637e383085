import type { BandBook, SheetPattern } from '../master/band-book.js';
import type { BandAnswer } from '../master/band-master.js';
import type { Pattern, Slice } from '../pattern/part.js';
import { transposed } from '../pattern/walk-part.js';

const WHOLE = 1e-6;

/**
 * Puts the bands of a master's answer into its sheets: patterns and how many
 * sheets are cut by each. The bands there are most of go in first, as often as
 * they last, so that few different patterns come of it. Whole amounts stay whole.
 */
export function compose(
  book: BandBook,
  answer: Pick<BandAnswer, 'sheets' | 'bands'>,
): readonly (readonly [Pattern, number])[] {
  const bands = new BandsLeft(book, answer.bands);
  const composed: [Pattern, number][] = [];
  const order = answer.sheets
    .map((amount, sheet) => ({ amount, sheet }))
    .filter(({ amount }) => amount > WHOLE)
    .sort((a, b) => b.amount - a.amount || a.sheet - b.sheet);
  for (const { amount, sheet } of order) {
    let left = amount;
    while (left > WHOLE) {
      const chosen = bands.choose(book.sheets[sheet], left);
      if (chosen.bands.length === 0) break;
      composed.push([patternOf(book, book.sheets[sheet], chosen.bands), chosen.times]);
      left -= chosen.times;
    }
  }
  return composed;
}

/** The bands that no sheet has taken yet, by slot. */
class BandsLeft {
  readonly #book: BandBook;
  readonly #left: Float64Array;
  readonly #ofSlot = new Map<number, number[]>();
  readonly #whole: boolean;

  constructor(book: BandBook, amounts: readonly number[]) {
    this.#book = book;
    this.#left = Float64Array.from(amounts);
    this.#whole = amounts.every(Number.isInteger);
    amounts.forEach((amount, band) => {
      if (!(amount > WHOLE)) return;
      const { slot } = book.bands[band];
      const same = this.#ofSlot.get(slot) ?? [];
      this.#ofSlot.set(slot, same);
      same.push(band);
    });
  }

  choose(sheet: SheetPattern, most: number): { bands: readonly number[]; times: number } {
    const chosen = new Map<number, number>();
    const share = Math.min(1, most);
    for (const [slot, count] of [...sheet.slots].reverse()) {
      for (let i = 0; i < count; i++) {
        const band = this.#best(slot, chosen, share);
        if (band !== undefined) chosen.set(band, (chosen.get(band) ?? 0) + 1);
      }
    }
    let times = most;
    for (const [band, copies] of chosen) times = Math.min(times, this.#left[band] / copies);
    if (this.#whole) times = Math.max(1, Math.floor(times + WHOLE));
    for (const [band, copies] of chosen) this.#left[band] -= copies * times;
    const bands = [...chosen].flatMap(([band, copies]) => new Array<number>(copies).fill(band));
    return { bands, times };
  }

  /** The band of the slot, or of the widest narrower one, of which most is left. */
  #best(slot: number, chosen: ReadonlyMap<number, number>, share: number): number | undefined {
    let best: number | undefined;
    let most = WHOLE;
    let extent = 0;
    for (const [other, bands] of this.#ofSlot) {
      if (other !== slot && !this.#book.mayLieIn(other, slot)) continue;
      const wide = this.#book.slots[other].extent;
      if (wide < extent) continue;
      for (const band of bands) {
        const left = this.#left[band] - (chosen.get(band) ?? 0) * share;
        if (left <= WHOLE || (wide === extent && left <= most)) continue;
        best = band;
        most = left;
        extent = wide;
      }
    }
    return best;
  }
}

function patternOf(book: BandBook, sheet: SheetPattern, bands: readonly number[]): Pattern {
  const counts = new Map<number, number>();
  let kept = sheet.kept;
  const parts = [...bands]
    .sort((a, b) => extentOf(book, b) - extentOf(book, a) || a - b)
    .map((index): Slice => {
      const band = book.bands[index];
      for (const [piece, copies] of band.counts) {
        counts.set(piece, (counts.get(piece) ?? 0) + copies);
      }
      kept += band.kept;
      const part = sheet.cuts === 'along' ? band.part : transposed(band.part);
      return { extent: extentOf(book, index), part };
    });
  return {
    stockClass: sheet.box,
    part: { kind: 'split', cuts: sheet.cuts, parts },
    counts: [...counts].sort((a, b) => a[0] - b[0]),
    kept,
  };
}

function extentOf(book: BandBook, band: number): number {
  return book.slots[book.bands[band].slot].extent;
}
