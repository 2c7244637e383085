import fc from 'fast-check';
import { readText } from '../order/fields.js';
import type { PlanFile, PlanFileLayout } from './plan-file.js';

/**
 * Random good plan files, drawn backwards: stock is cut up at random as its shear can,
 * and what comes off is then what was wanted. One to four hundred pieces on a stock.
 */
export const anyPlan: fc.Arbitrary<PlanFile> = fc.gen().map((g) => draw(g, 3));
/** Plans of one layout. */
export const anyLayoutPlan: fc.Arbitrary<PlanFile> = fc.gen().map((g) => draw(g, 1));

type Draw = fc.GeneratorValue;
type Runs = 'along' | 'across';

const MOST_PIECES = 400;

/** Names that an order may have, and that no file and no markup should stumble over. */
const NAMES = [
  'Heart, large',
  'W',
  '=SUM(A1:A9)',
  '@tin',
  '-12 + 3',
  'A "small" <b>boat</b> & its </text><script> ]]> -->',
  'קן ציפור 12',
  '🐻‍❄️ biscuit tin 🫖',
  '../../etc; rm -rf \\ / *',
  'long and longer and longer and longer and longer and longer',
  `tower${'\u0301'.repeat(20)}`,
];

/** A rectangle to be cut: what is cut off it one after the other, then what is left. Ticks. */
type Part = { readonly kind: 'piece' } | { readonly kind: 'remnant' } | Slices;
interface Slices {
  readonly kind: 'slices';
  readonly runs: Runs;
  readonly slices: readonly { readonly extent: number; readonly part: Part }[];
}

interface Size {
  readonly length: number;
  readonly width: number;
}
interface Place extends Size {
  readonly x: number;
  readonly y: number;
}

interface Blank extends Size {
  readonly id: string;
  count: number;
}

function draw(g: Draw, mostLayouts: number): PlanFile {
  const whole = (min: number, max: number) => g(fc.integer, { min, max });
  const maybe = () => g(fc.boolean);
  const units = g(fc.constantFrom, 'in' as const, 'mm' as const);
  const mark = units === 'in' ? 25.4 / 32 : 0.5;
  const long = (ticks: number) => Number((ticks * mark).toFixed(6));
  const names = namesOf(g, maybe);
  const kerf = maybe() ? 0 : whole(0, 2);
  const trim = maybe() ? 0 : whole(Math.max(1, kerf), 12);
  const stages = g(fc.constantFrom, 2 as const, 3 as const, 'free' as const);
  const firstCut = g(fc.constantFrom, 'along' as const, 'across' as const, 'either' as const);
  const keep = maybe()
    ? { least: whole(20, 200), worth: whole(0, 900), trouble: whole(0, 5) }
    : undefined;
  const coins = ({ length, width }: Size) => {
    const isKept = keep !== undefined && Math.min(length, width) >= keep.least;
    const gross = Number((BigInt(length * width) * BigInt(keep?.worth ?? 0)) / 1_000_000n);
    return { keep: isKept, value: isKept ? Math.max(0, gross - (keep?.trouble ?? 0)) / 100 : 0 };
  };
  const blanks: Blank[] = [];
  const parts = { bought: 0, fromShop: 0, kept: 0 };
  const buy: PlanFile['buy'][number][] = [];
  const stock: PlanFile['stock'][number][] = [];
  const layouts = Array.from({ length: whole(1, mostLayouts) }, (_, index): PlanFileLayout => {
    const kind = g(fc.constantFrom, 'sheet' as const, 'offcut' as const);
    const size = { length: whole(100, 900), width: whole(80, 700) };
    const count = kind === 'offcut' ? 1 : whole(1, 5);
    const runs = firstCut === 'either' ? g(fc.constantFrom, 'along', 'across') : firstCut;
    const cutter = new Cutter(g, { kerf, stages, runs: runs as Runs, blanks, names });
    const laid = cutter.cutUp(size, kind === 'sheet' ? trim : 0);
    for (const { blank } of laid.pieces) blank.count += count;
    const remnants = laid.remnants.map((remnant) => ({ ...remnant, ...coins(remnant) }));
    const value = coins(size).value;
    const id = `${names(100 + index)}`;
    const listed = { id, length: long(size.length), width: long(size.width) };
    const bookValue = value + whole(0, 500) / 100;
    const rolled = maybe() ? { rolling: g(fc.constantFrom, 'along', 'across') as Runs } : {};
    if (kind === 'sheet') {
      const [price, onHand] = [value + whole(0, 900) / 100, whole(0, 2)];
      stock.push({
        ...listed,
        kind,
        price: cents(price),
        onHand,
        canBuy: 'any',
        bookValue: cents(bookValue),
        ...rolled,
      });
      const bought = Math.max(0, count - onHand);
      if (bought > 0) buy.push({ stock: id, count: bought, cost: cents(bought * price) });
      parts.bought += bought * price;
      parts.fromShop += (count - bought) * bookValue;
    } else {
      stock.push({ ...listed, kind, bookValue: cents(bookValue), ...rolled });
      parts.fromShop += bookValue;
    }
    for (const remnant of remnants) parts.kept += count * remnant.value;
    const at = ({ x, y, length, width }: Place) => ({
      x: long(x),
      y: long(y),
      length: long(length),
      width: long(width),
    });
    return {
      stock: { id, kind, length: listed.length, width: listed.width },
      count,
      pieces: laid.pieces.map(({ blank, ...place }) => ({
        blank: blank.id,
        ...at(place),
        turned: place.turned,
      })),
      cuts: laid.cuts.map(({ stage, x1, y1, x2, y2 }) => ({
        stage,
        x1: long(x1),
        y1: long(y1),
        x2: long(x2),
        y2: long(y2),
      })),
      remnants: remnants.map((remnant) => ({
        ...at(remnant),
        keep: remnant.keep,
        value: cents(remnant.value),
      })),
    };
  });
  const cost = cents(parts.bought + parts.fromShop - parts.kept);
  return {
    schemaVersion: 1,
    order: {
      name: names(99),
      units,
      smallestMark: mark,
      ...(maybe()
        ? { metal: { name: 'tinplate', thickness: 0.28, bendRule: 'zero thickness' } }
        : {}),
      currency: g(fc.constantFrom, '$', '€', '', 'kr'),
    },
    shear: {
      firstCut,
      stages,
      ...(kerf > 0 ? { kerf: long(kerf) } : {}),
      ...(trim > 0 ? { trim: long(trim) } : {}),
    },
    stock,
    blanks: blanks.map(({ id, length, width, count }) => ({
      id,
      length: long(length),
      width: long(width),
      quantity: count,
      mayTurn: true,
    })),
    layouts,
    ...(keep === undefined
      ? {}
      : {
          keep: [
            {
              leastLength: long(keep.least),
              leastWidth: long(keep.least),
              worth: keep.worth / 100,
              trouble: keep.trouble / 100,
            },
          ],
        }),
    buy,
    spares: [],
    cost,
    parts: {
      bought: cents(parts.bought),
      fromShop: cents(parts.fromShop),
      kept: cents(parts.kept),
    },
    bound: { cost, proven: true },
    effort: { rounds: 0, patterns: 0, integerMasters: 0, nodes: 0, ending: 'bound met' },
  };
}

const cents = (amount: number): number => Math.round(amount * 100) / 100;

/** A name for each number, the same for the same one. */
function namesOf(g: Draw, maybe: () => boolean): (index: number) => string {
  const given = new Map<number, string>();
  const taken = new Set<string>();
  return (index) => {
    const known = given.get(index);
    if (known !== undefined) return known;
    const drawn = maybe()
      ? g(fc.constantFrom, ...NAMES)
      : g(fc.string, { unit: 'grapheme' as const, maxLength: 40 });
    const read = readText(drawn);
    const bare = read.ok ? read.value : 'Acorn';
    const name = taken.has(bare) ? `${bare} ${index}` : bare;
    taken.add(name);
    given.set(index, name);
    return name;
  };
}

interface Bench {
  readonly kerf: number;
  readonly stages: 2 | 3 | 'free';
  readonly runs: Runs;
  readonly blanks: Blank[];
  readonly names: (index: number) => string;
}

/** Cuts up one stock. */
class Cutter {
  readonly cuts: { stage: number; x1: number; y1: number; x2: number; y2: number }[] = [];
  readonly pieces: (Place & { blank: Blank; turned: boolean })[] = [];
  readonly remnants: Place[] = [];
  readonly #g: Draw;
  readonly #bench: Bench;
  /** About how long the shorter sides of most pieces are. */
  readonly #grain: number;
  /** Pieces that may still come. */
  #left = MOST_PIECES;

  constructor(g: Draw, bench: Bench) {
    this.#g = g;
    this.#bench = bench;
    this.#grain = g(fc.constantFrom, 12, 24, 48, 96, 200);
  }

  cutUp({ length, width }: Size, trim: number): Cutter {
    const { kerf, runs } = this.#bench;
    if (trim > 0) {
      this.cuts.push(
        { stage: 0, x1: trim - kerf, y1: 0, x2: trim - kerf, y2: width },
        { stage: 0, x1: length - trim, y1: 0, x2: length - trim, y2: width },
        { stage: 0, x1: trim, y1: trim - kerf, x2: length - trim, y2: trim - kerf },
        { stage: 0, x1: trim, y1: width - trim, x2: length - trim, y2: width - trim },
      );
    }
    const box = { x: trim, y: trim, length: length - 2 * trim, width: width - 2 * trim };
    const part = this.#part(box, 1, runs, 1);
    this.#lay(part, box, 1);
    if (this.pieces.length === 0) {
      // Something has to be made: what was left over is wanted after all.
      const first = this.remnants.shift();
      if (first !== undefined) this.#piece(first);
    }
    // The order of the bench: stage by stage, as they come.
    this.cuts.sort((one, other) => one.stage - other.stage);
    return this;
  }

  #whole(min: number, max: number): number {
    return this.#g(fc.integer, { min, max });
  }

  /** @param copies how often the part will lie there */
  #part(size: Size, stage: number, runs: Runs, copies: number): Part {
    const { stages, kerf } = this.#bench;
    const last = stages === 'free' ? 6 : stages + 1;
    const extent = runs === 'along' ? size.width : size.length;
    const least = Math.min(this.#grain, Math.floor(extent / 2));
    const leaf = stage > 1 && (stage > last || this.#whole(0, 4) === 0);
    if (leaf || least < 8 || least + kerf >= extent || this.#left < 2 * copies) {
      const isPiece = this.#left >= copies && this.#whole(0, 5) > 0;
      if (isPiece) this.#left -= copies;
      return isPiece ? { kind: 'piece' } : { kind: 'remnant' };
    }
    const slices: { extent: number; part: Part }[] = [];
    let left = extent;
    const trimsOnly = stage === last && stages !== 'free';
    for (let round = trimsOnly ? 5 : 0; round < 6 && left - kerf > least; round++) {
      const own = this.#whole(least, Math.min(left - kerf - 1, 6 * least));
      const fit = Math.floor((left - 1) / (own + kerf));
      const times = trimsOnly ? 1 : Math.min(this.#whole(1, fit), 24);
      const turned = runs === 'along' ? 'across' : 'along';
      const inner = runs === 'along' ? { ...size, width: own } : { ...size, length: own };
      const part: Part = trimsOnly
        ? { kind: 'piece' }
        : this.#part(inner, stage + 1, turned, copies * times);
      for (let time = 0; time < times; time++) slices.push({ extent: own, part });
      left -= times * (own + kerf);
    }
    if (!trimsOnly && left >= least && this.#whole(0, 1) === 0) {
      // Nothing is left over: the last one is what the others leave.
      const inner = runs === 'along' ? { ...size, width: left } : { ...size, length: left };
      const turned = runs === 'along' ? 'across' : 'along';
      slices.push({ extent: left, part: this.#part(inner, stage + 1, turned, copies) });
    }
    return { kind: 'slices', runs, slices };
  }

  #lay(part: Part, place: Place, stage: number): void {
    if (part.kind === 'piece') {
      this.#piece(place);
      return;
    }
    if (part.kind === 'remnant') {
      this.remnants.push(place);
      return;
    }
    const { kerf } = this.#bench;
    let rest = place;
    for (const { extent, part: inner } of part.slices) {
      const { x, y, length, width } = rest;
      if (extent === (part.runs === 'along' ? width : length)) {
        this.#lay(inner, rest, stage + 1);
        return;
      }
      if (part.runs === 'along') {
        this.cuts.push({ stage, x1: x, y1: y + extent, x2: x + length, y2: y + extent });
        this.#lay(inner, { x, y, length, width: extent }, stage + 1);
        rest = { x, y: y + extent + kerf, length, width: width - extent - kerf };
      } else {
        this.cuts.push({ stage, x1: x + extent, y1: y, x2: x + extent, y2: y + width });
        this.#lay(inner, { x, y, length: extent, width }, stage + 1);
        rest = { x: x + extent + kerf, y, length: length - extent - kerf, width };
      }
    }
    this.remnants.push(rest);
  }

  #piece(place: Place): void {
    const { blanks, names } = this.#bench;
    const { length, width } = place;
    const known = blanks.find(
      (blank) =>
        (blank.length === length && blank.width === width) ||
        (blank.length === width && blank.width === length),
    );
    const turned = known === undefined ? this.#g(fc.boolean) : known.length !== length;
    const size = turned ? { length: width, width: length } : { length, width };
    const blank = known ?? { id: names(blanks.length), ...size, count: 0 };
    if (known === undefined) blanks.push(blank);
    this.pieces.push({ ...place, blank, turned });
  }
}
