import type { Box } from '../pattern/box.js';
import type { Limits } from '../pattern/limits.js';
import type { Part, Pattern } from '../pattern/part.js';
import type { Band, PatternList } from '../pattern/pattern-pricer.js';
import { countsOf, partKey, transposed } from '../pattern/walk-part.js';
import type { Rolling } from '../problem.js';

/**
 * Where a band fits: in every box that has such a slot. Boxes of different sizes
 * share a slot where their bands are as long and the same pieces may lie in them
 * the same ways.
 */
export interface Slot {
  readonly family: number;
  /** Gross extent square to the first cuts. */
  readonly extent: number;
}

/** What lies in a slot, as it lies where the first cuts run along the stock. */
export interface BandPattern {
  /** Index of the slot. */
  readonly slot: number;
  readonly part: Part;
  /** [index of the piece, copies], ascending. */
  readonly counts: readonly (readonly [number, number])[];
  readonly kept: number;
}

/** How the first cuts divide a box, whatever is cut from the bands. */
export interface SheetPattern {
  readonly box: number;
  readonly cuts: Rolling;
  /** [index of the slot, bands at least 1], ascending. */
  readonly slots: readonly (readonly [number, number])[];
  /** Coins that the rest beside the bands is worth. */
  readonly kept: number;
}

/** Values the remnants of a band of so many gross ticks by so many. */
export type KeptInBand = (part: Part, length: number, extent: number) => number;

/**
 * Keeps patterns on two levels, bands apart from the sheets they are cut off,
 * each once: bands of one slot can change places, so that a few of each level
 * make many patterns.
 */
export class BandBook {
  readonly slots: Slot[] = [];
  readonly bands: BandPattern[] = [];
  readonly sheets: SheetPattern[] = [];
  readonly #boxes: readonly Box[];
  readonly #keptIn: KeptInBand | undefined;
  readonly #limits: Limits;
  readonly #families = new Map<string, number>();
  readonly #familyOf: ReadonlyMap<Rolling, number>[];
  readonly #slotAt = new Map<string, number>();
  /** By family. */
  readonly #slotsOf = new Map<number, number[]>();
  readonly #bandAt = new Map<string, number>();
  readonly #sheetAt = new Map<string, number>();

  /** @param keptIn coins that the remnants within a band are worth, as it lies along; absent for none */
  constructor(boxes: readonly Box[], limits: Limits, keptIn?: KeptInBand) {
    this.#keptIn = keptIn;
    this.#boxes = boxes;
    this.#limits = limits;
    this.#familyOf = boxes.map(
      (box) => new Map(box.firstCuts.map((cuts) => [cuts, this.#family(box, cuts)])),
    );
  }

  /** Takes in a pattern. */
  addPattern(pattern: Pattern): { readonly sheet: number; readonly bands: readonly number[] } {
    const box = this.#boxes[pattern.stockClass];
    const root = asSplit(pattern.part, box);
    const counts = new Map<number, number>();
    let inBands = 0;
    const bands = root.parts.map(({ extent, part }) => {
      const band = this.addBand({
        box: pattern.stockClass,
        cuts: root.cuts,
        extent,
        part,
      });
      const { slot } = this.bands[band];
      counts.set(slot, (counts.get(slot) ?? 0) + 1);
      inBands += this.bands[band].kept;
      return band;
    });
    const slots = [...counts].sort((a, b) => a[0] - b[0]);
    const sheet = this.addSheet({
      box: pattern.stockClass,
      cuts: root.cuts,
      slots,
      kept: Math.max(0, pattern.kept - inBands),
    });
    return { sheet, bands };
  }

  addBand(band: Omit<Band, 'kept'>): number {
    const slot = this.slot(band.box, band.cuts, band.extent);
    const part = band.cuts === 'along' ? band.part : transposed(band.part);
    const key = `${slot} ${partKey(part)}`;
    const known = this.#bandAt.get(key);
    if (known !== undefined) return known;
    this.#bandAt.set(key, this.bands.length);
    const { length, width } = this.#boxes[band.box];
    const kept = this.#keptIn?.(part, band.cuts === 'along' ? length : width, band.extent) ?? 0;
    this.bands.push({ slot, part, counts: countsOf(part), kept });
    return this.bands.length - 1;
  }

  addSheet(sheet: SheetPattern): number {
    const key = `${sheet.box} ${sheet.cuts} ${sheet.slots.join(' ')}`;
    const known = this.#sheetAt.get(key);
    if (known !== undefined) return known;
    this.#sheetAt.set(key, this.sheets.length);
    this.sheets.push(sheet);
    return this.sheets.length - 1;
  }

  addList(list: PatternList): void {
    for (const band of list.bands) this.addBand(band);
    for (const { box, cuts, extents } of list.sheets) {
      const slots = extents
        .map(([extent, count]) => [this.slot(box, cuts, extent), count] as const)
        .sort((a, b) => a[0] - b[0]);
      this.addSheet({ box, cuts, slots, kept: 0 });
    }
  }

  /** Takes in bands and sheet patterns of another book over the same boxes. */
  adopt(other: BandBook, bands: readonly number[], sheets: readonly number[]): void {
    const here = (slot: number) => this.#slotIn(other.slots[slot].family, other.slots[slot].extent);
    for (const index of bands) {
      const band = other.bands[index];
      const slot = here(band.slot);
      const key = `${slot} ${partKey(band.part)}`;
      if (this.#bandAt.has(key)) continue;
      this.#bandAt.set(key, this.bands.length);
      this.bands.push({ ...band, slot });
    }
    for (const index of sheets) {
      const sheet = other.sheets[index];
      const slots = sheet.slots
        .map(([slot, count]) => [here(slot), count] as const)
        .sort((one, two) => one[0] - two[0]);
      this.addSheet({ ...sheet, slots });
    }
  }

  /** The slots so far that first cuts of a box can make. */
  slotsOf(box: number, cuts: Rolling): readonly number[] {
    const family = this.#familyOf[box].get(cuts);
    const { length, width } = this.#boxes[box];
    const breadth = cuts === 'along' ? width : length;
    const slots = (family === undefined ? undefined : this.#slotsOf.get(family)) ?? [];
    return slots.filter((slot) => this.slots[slot].extent <= breadth);
  }

  /** The slots so far of the family of one, itself among them, in the order in which they came up. */
  alike(slot: number): readonly number[] {
    return this.#slotsOf.get(this.slots[slot].family) ?? [];
  }

  slot(box: number, cuts: Rolling, extent: number): number {
    const family = this.#familyOf[box].get(cuts);
    if (family === undefined) throw new Error(`the first cuts of box ${box} never run ${cuts}`);
    return this.#slotIn(family, extent);
  }

  /** The same slot in this book; undefined where it has not come up. */
  find({ family, extent }: Slot): number | undefined {
    return this.#slotAt.get(`${family} ${extent}`);
  }

  /** Whether the slot of a band has come up. */
  has({ box, cuts, extent }: Pick<Band, 'box' | 'cuts' | 'extent'>): boolean {
    return this.#slotAt.has(`${this.#familyOf[box].get(cuts)} ${extent}`);
  }

  /** Whether a band of the narrower slot may lie in the wider one of the same family, the rest left over. */
  mayLieIn(narrower: number, wider: number): boolean {
    const [a, b] = [this.slots[narrower], this.slots[wider]];
    return a.family === b.family && b.extent > a.extent && this.#limits.narrowest <= 1;
  }

  #slotIn(family: number, extent: number): number {
    const key = `${family} ${extent}`;
    const known = this.#slotAt.get(key);
    if (known !== undefined) return known;
    this.#slotAt.set(key, this.slots.length);
    const slot = this.slots.length;
    this.slots.push({ family, extent });
    const slots = this.#slotsOf.get(family);
    if (slots === undefined) this.#slotsOf.set(family, [slot]);
    else slots.push(slot);
    return slot;
  }

  #family(box: Box, cuts: Rolling): number {
    const straight = cuts === 'along';
    const [length, breadth] = straight ? [box.length, box.width] : [box.width, box.length];
    const whole = length - this.#limits.kerf > this.#limits.longestCut;
    const lays = box.lays.map((lay) =>
      straight
        ? `${lay.piece}${lay.turned ? 'x' : ':'}${lay.length}:${lay.width}`
        : `${lay.piece}${lay.turned ? ':' : 'x'}${lay.width}:${lay.length}`,
    );
    const key = [length, whole ? breadth : '', ...lays.sort()].join(' ');
    const known = this.#families.get(key) ?? this.#families.size;
    this.#families.set(key, known);
    return known;
  }
}

/** A pattern's first cuts; a piece that takes the whole box lies in one band. */
export function asSplit(part: Part, box: Box): Extract<Part, { kind: 'split' }> {
  if (part.kind === 'split') return part;
  const [cuts] = box.firstCuts;
  return {
    kind: 'split',
    cuts,
    parts: [{ extent: cuts === 'along' ? box.width : box.length, part }],
  };
}
