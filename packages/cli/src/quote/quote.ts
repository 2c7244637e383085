import { metalNamed, sheetWeight } from '@stripwright/strip-geometry';
import type { Planned } from '../job-sheet/job-sheet.js';
import { type Coins, coinsOf } from '../money.js';
import type { Labour, Work } from '../order/order.js';
import { USUAL_METAL } from '../order/thickness.js';
import type { PlanFile } from '../plan-file/plan-file.js';
import { planOnFile } from '../plan-file/plan-on-file.js';
import { type Exact, exactly, roundedHalfUp, times } from './exact.js';
import { shareOut } from './share-out.js';

// Money is in whole coins. Each line is reckoned exactly and rounded once, half a coin
// up; totals are the sums of the rounded lines, so that what is printed adds up.

export interface Quote {
  /** Where metal comes from and where it goes; areas of the first equal those of the second. */
  readonly metal: { readonly from: readonly MetalLine[]; readonly to: readonly MetalLine[] };
  /** What metal costs: bought and taken from the shop, less what goes back to it. */
  readonly metalCost: Coins;
  /** Empty where the shop does not reckon its work. */
  readonly work: readonly WorkLine[];
  readonly workCost: Coins;
  /** In per cent; absent where the shop adds none. */
  readonly marginPercent?: Exact;
  readonly margin: Coins;
  readonly price: Coins;
  /** One for each blank; their columns add up to the amounts above. */
  readonly blanks: readonly BlankLine[];
}

export interface MetalLine {
  readonly what: string;
  /** Square millimetres. */
  readonly area: number;
  /** Grams; absent where a thickness is not known. */
  readonly weight?: number;
  /** Absent where it has no price. */
  readonly money?: Coins;
}

export interface WorkLine {
  readonly work: Work;
  readonly count: number;
  /** For each. */
  readonly minutes: Exact;
  readonly money: Coins;
}

export interface BlankLine {
  /** Its place in the order's list of strips, from 1. */
  readonly number: number;
  readonly name: string;
  readonly quantity: number;
  readonly metal: Coins;
  readonly work: Coins;
  readonly margin: Coins;
  readonly price: Coins;
  /** The price over the quantity, rounded; absent where none are wanted. */
  readonly each?: Coins;
}

const MINUTES_AN_HOUR = 60n;
const total = (amounts: readonly number[]): number =>
  amounts.reduce((sum, amount) => sum + amount, 0);

/** What the order costs the shop, and what it asks for it. */
export function quoteOf({ sized, file }: Planned): Quote {
  const { labour, margin: percent } = sized.order.shop;
  const { plan, problem } = planOnFile(file);
  const metalCost = plan.cost;
  const quantities = file.blanks.map(({ quantity }) => BigInt(quantity));
  const metals = shareOut(
    metalCost,
    problem.pieces.map(
      ({ length, width, quantity }) => BigInt(length) * BigInt(width) * BigInt(quantity),
    ),
  );
  const done = labour === undefined ? [] : workLines(labour, file);
  const workShares = done.map(({ line, counts }) => shareOut(line.money, counts));
  const works = file.blanks.map((_, index) =>
    total(workShares.map((shares) => shares[index] ?? 0)),
  );
  const work = done.map(({ line }) => line);
  const workCost = total(work.map(({ money }) => money));
  const cost = metalCost + workCost;
  const margin =
    percent === undefined
      ? 0
      : roundedHalfUp(times(exactly(cost), percent, { over: 1n, under: 100n }));
  const margins = shareOut(
    margin,
    metals.map((metal, index) => BigInt(metal + (works[index] ?? 0))),
  );
  const blanks = file.blanks.map(({ id, quantity }, index): BlankLine => {
    const [metal, own, added] = [metals[index] ?? 0, works[index] ?? 0, margins[index] ?? 0];
    const price = metal + own + added;
    const under = quantities[index] ?? 0n;
    return {
      number: index + 1,
      name: id,
      quantity,
      metal,
      work: own,
      margin: added,
      price,
      ...(under === 0n ? {} : { each: roundedHalfUp({ over: BigInt(price), under }) }),
    };
  });
  return {
    metal: metalLines(file),
    metalCost,
    work,
    workCost,
    ...(percent === undefined ? {} : { marginPercent: percent }),
    margin,
    price: cost + margin,
    blanks,
  };
}

/** The work that takes time, with how much of it each blank takes. */
function workLines(
  { hourlyRate, minutes }: Labour,
  file: PlanFile,
): readonly { readonly line: WorkLine; readonly counts: readonly bigint[] }[] {
  const cuts = total(file.layouts.map(({ count, cuts: made }) => count * made.length));
  const ofBlank = (count: (blank: PlanFile['blanks'][number]) => number) =>
    file.blanks.map((blank) => BigInt(blank.quantity) * BigInt(count(blank)));
  const counted: readonly (readonly [Work, readonly bigint[]])[] = [
    // Nobody can tell which blank a cut is for: it is shared out by their numbers.
    ['cut', ofBlank(() => 1)],
    ['bend', ofBlank(({ strip }) => (strip?.bends.length ?? 0) + (strip?.curves.length ?? 0))],
    ['notch', ofBlank(({ strip }) => (strip?.notches?.length ?? 0) + (strip?.snips?.length ?? 0))],
    ['seam', ofBlank(({ strip }) => (strip === undefined ? 0 : 1))],
  ];
  return counted.flatMap(([work, counts]) => {
    const each = minutes[work];
    if (each === undefined) return [];
    const count = work === 'cut' ? cuts : Number(counts.reduce((sum, own) => sum + own, 0n));
    const hours = times(exactly(count), each, { over: 1n, under: MINUTES_AN_HOUR });
    const money = roundedHalfUp(times(hours, exactly(hourlyRate)));
    return [{ line: { work, count, minutes: each, money }, counts }];
  });
}

interface Extent {
  readonly length: number;
  readonly width: number;
}

function metalLines(file: PlanFile): Quote['metal'] {
  const { layouts, stock, buy, parts } = file;
  const area = ({ length, width }: Extent): number => length * width;
  /** Grams of so many square millimetres of a stock. */
  const weigh = (id: string, square: number): number | undefined => {
    const entry = stock.find((one) => one.id === id);
    const thickness = entry?.thickness ?? file.order.metal?.thickness;
    const metal = metalNamed(entry?.metal ?? file.order.metal?.name ?? USUAL_METAL);
    if (thickness === undefined || metal === undefined) return undefined;
    return sheetWeight(metal, square, thickness);
  };
  const line = (
    what: string,
    shares: readonly { readonly id: string; readonly area: number }[],
    money?: number,
  ): MetalLine => {
    const weights = shares.map(({ id, area: own }) => (own === 0 ? 0 : weigh(id, own)));
    const known = weights.flatMap((weight) => (weight === undefined ? [] : [weight]));
    return {
      what,
      area: total(shares.map((share) => share.area)),
      ...(known.length < weights.length ? {} : { weight: total(known) }),
      ...(money === undefined ? {} : { money: coinsOf(money) ?? Math.round(money * 100) }),
    };
  };
  const perLayout = (of: (layout: PlanFile['layouts'][number]) => number) =>
    layouts.map((layout) => ({ id: layout.stock.id, area: layout.count * of(layout) }));
  const sum = (rectangles: readonly Extent[]): number => total(rectangles.map(area));
  const kept = ({ remnants }: PlanFile['layouts'][number]) => remnants.filter(({ keep }) => keep);

  const use = stock.map((entry) => {
    const cut = total(layouts.filter((one) => one.stock.id === entry.id).map((one) => one.count));
    const bought = total(buy.filter((one) => one.stock === entry.id).map((one) => one.count));
    const onHand = entry.kind === 'offcut' ? 1 : entry.onHand;
    const ours = Math.min(cut, onHand);
    const [size, id] = [area(entry), entry.id];
    return {
      bought: { id, area: bought * size },
      ours: { id, area: ours * size },
      whole: { id, area: (bought + ours - cut) * size },
    };
  });
  const leftWhole = use.map(({ whole }) => whole);
  const to = [
    line(
      'In the pieces',
      perLayout(({ pieces }) => sum(pieces)),
    ),
    line(
      'Offcuts back to the rack',
      perLayout((layout) => sum(kept(layout))),
    ),
    ...(leftWhole.some((share) => share.area > 0) ? [line('Sheets left whole', leftWhole)] : []),
    line(
      'Scrap, with what cuts and trims take',
      perLayout((layout) => area(layout.stock) - sum(layout.pieces) - sum(kept(layout))),
    ),
  ];
  return {
    from: [
      line(
        'Bought',
        use.map(({ bought }) => bought),
        parts.bought,
      ),
      line(
        'Taken from the shop',
        use.map(({ ours }) => ours),
        parts.fromShop,
      ),
    ],
    to,
  };
}
