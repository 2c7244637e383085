import type { BandBook } from '../master/band-book.js';
import type { BandAnswer } from '../master/band-master.js';
import { countsOf } from '../pattern/walk-part.js';
import { solveCheapest } from './cheapest-master.js';
import { compose } from './compose.js';
import type { Covered, CoverRequest } from './cover.js';
import { FixedMaster } from './fixed-master.js';
import type { SearchGround } from './ground.js';
import type { Planned } from './planned.js';
import { likelyDivisions } from './sheet-divisions.js';

export interface CoverByFixingRequest extends Omit<CoverRequest, 'weights' | 'shaken' | 'nodes'> {
  readonly weights: readonly number[];
  /** What going without a piece counts in the linear plan, in the measure of the objective. */
  readonly losses: readonly number[];
  /** Patterns of the whole problem that cost least at its duals. */
  readonly likely: LikelyPatterns;
  readonly random: () => number;
}

/** Patterns of a book that cost least at the duals of its linear plan. */
export interface LikelyPatterns {
  readonly book: BandBook;
  readonly bands: readonly number[];
  readonly sheets: readonly number[];
}

/** Rounds of column generation before anything is settled, and each time something was. */
const ROUNDS_FIRST = 30;
const ROUNDS_EACH = 4;
/** An amount is settled as if it were whole when no more than this is lacking. */
const NEARLY_WHOLE = 0.05;
/** How far noise may change the weight of an amount, as a share. */
const NOISE = 0.5;
/** Bands are settled rather than sheets, which more bands can do without. */
const SHEETS_WEIGH = 0.6;
/** Once no more bands than this are open, the integer master settles the rest. */
const BANDS_OPEN = 5;
/** Patterns that the integer master works with, and nodes it may take: to better a plan, and for a first one. */
const SMALL = { sheets: 120, bands: 150, nodes: 20 };
const LARGE = { sheets: 400, bands: 400, nodes: 50 };
/** Bands, and divisions of a face, that are listed for it, and by what share of a sheet they may fall short. */
const LISTED_BANDS = 200;
const LISTED_DIVISIONS = 60;
const LISTED_SHORT = 0.3;
const EPSILON = 1e-6;

/**
 * Cuts as much of a demand as the caps allow by settling bands and sheets one
 * after another, those the linear plan has most of first, and solving the
 * linear plan with fresh patterns in between; an integer master cuts the last few
 * bands. Since bands are settled before it is known what lies beside them, the
 * linear plan stays close to its best almost to the end.
 */
export async function coverByFixing(
  ground: SearchGround,
  request: CoverByFixingRequest,
): Promise<Covered | undefined> {
  const { demand, classes, caps, losses, likely, random } = request;
  const book = ground.newBook();
  for (const pattern of request.seeds) book.addPattern(pattern);
  const bands = likely.bands.filter((band) =>
    likely.book.bands[band].counts.every(([piece, copies]) => copies <= demand[piece]),
  );
  book.adopt(likely.book, bands, likely.sheets);
  const objective = { cost: ground.objective.cost, caps };
  const master = new FixedMaster(ground, { demand, classes, objective, losses, book });
  try {
    let answer = await settleSupplies(ground, master, await master.open(ROUNDS_FIRST));
    while (answer !== undefined && !hopeless(answer, request) && settle(master, answer, random)) {
      answer = await master.solve(ROUNDS_EACH);
    }
    if (answer === undefined) return undefined;
    if (hopeless(answer, request)) return { planned: undefined, best: false };
    return await finish(ground, request, master, book, answer);
  } finally {
    master.close();
  }
}

/** Settles how many of each supply are taken, the dearest fractions first, whichever way costs less. */
async function settleSupplies(
  { objective }: SearchGround,
  master: FixedMaster,
  start: BandAnswer | undefined,
): Promise<BandAnswer | undefined> {
  let answer = start;
  while (answer !== undefined) {
    let dearest: { g: number; t: number; amount: number; price: number } | undefined;
    answer.supplies.forEach((amounts, g) => {
      amounts.forEach((amount, t) => {
        const part = Math.abs(amount - Math.round(amount));
        const price = objective.cost?.of(master.classes[g].supplies[t]) ?? 0;
        if (part > 1e-5 && price > (dearest?.price ?? 0)) dearest = { g, t, amount, price };
      });
    });
    if (dearest === undefined) return answer;
    const { g, t, amount } = dearest;
    const tried: { count: number; next: BandAnswer }[] = [];
    for (const count of [Math.floor(amount), Math.ceil(amount)]) {
      master.fixSupply(g, t, count);
      const next = await master.solve(2);
      if (next !== undefined) tried.push({ count, next });
    }
    tried.sort((a, b) => a.next.cost - b.next.cost);
    if (tried.length === 0) return undefined;
    master.fixSupply(g, t, tried[0].count);
    answer = tried[0].next;
  }
  return undefined;
}

/** Whether even the linear plan goes without more than is of use. */
function hopeless({ short }: BandAnswer, { weights, cutoff }: CoverByFixingRequest): boolean {
  const lacking = short.reduce((sum, amount, piece) => sum + amount * weights[piece], 0);
  return cutoff !== undefined && lacking > cutoff + EPSILON;
}

/**
 * Settles what is whole, and one more.
 * @returns false once few bands are open
 */
function settle(master: FixedMaster, answer: BandAnswer, random: () => number): boolean {
  let open = 0;
  let most = 0;
  let settleMost: (() => void) | undefined;
  const consider = (amount: number, settled: number, share: number, fix: (n: number) => void) => {
    const part = amount - settled;
    const whole = Math.max(0, Math.floor(part + NEARLY_WHOLE));
    if (whole > 0) fix(whole);
    const rest = part - whole;
    if (rest <= EPSILON) return 0;
    const weight = share * rest * (1 + NOISE * (random() - 0.5));
    if (weight > most) {
      most = weight;
      settleMost = () => fix(1);
    }
    return rest;
  };
  answer.sheets.forEach((amount, sheet) => {
    consider(amount, master.sheets[sheet] ?? 0, SHEETS_WEIGH, (n) => master.fixSheet(sheet, n));
  });
  answer.bands.forEach((amount, band) => {
    open += consider(amount, master.bands[band] ?? 0, 1, (n) => master.fixBand(band, n));
  });
  if (open < BANDS_OPEN || settleMost === undefined) return false;
  settleMost();
  return true;
}

/** Cuts what is open by an integer master over the likeliest patterns. */
async function finish(
  ground: SearchGround,
  request: CoverByFixingRequest,
  master: FixedMaster,
  book: BandBook,
  { duals }: BandAnswer,
): Promise<Covered> {
  const { classes, caps, weights, cutoff } = request;
  if (duals !== undefined) {
    const gap = LISTED_SHORT * Math.max(0, ...duals.classes);
    addLikelyBands(ground, book, master.left, duals, gap);
    const divisions = likelyDivisions(ground, book, duals, master.needed, gap, LISTED_DIVISIONS);
    for (const division of divisions) book.addSheet(division);
  }
  const { answer, best } = await solveCheapest(ground, {
    book,
    demand: master.left,
    classes,
    caps,
    weights,
    duals,
    ...(request.cutoff === undefined ? LARGE : SMALL),
    needed: master.needed,
    settled: master.sheets,
    cutoff,
  });
  if (answer === undefined) return { planned: undefined, best };
  const bands = book.bands.map((_, band) => (master.bands[band] ?? 0) + answer.bands[band]);
  const planned = compose(book, { sheets: answer.sheets, bands }).map(
    ([pattern, count]): Planned => ({ pattern, count }),
  );
  return { planned, best };
}

/** Adds bands of the pieces left that fall short of gaining by at most a gap. */
function addLikelyBands(
  ground: SearchGround,
  book: BandBook,
  left: readonly number[],
  duals: NonNullable<BandAnswer['duals']>,
  gap: number,
): void {
  const { scale } = ground;
  const pricer = ground.pricerFor(left);
  if (pricer.within === undefined) return;
  const values = duals.pieces.map((dual, piece) =>
    left[piece] > 0 ? Math.max(0, Math.floor(dual * scale)) : 0,
  );
  const prices = duals.classes.map((dual) => Math.floor(Math.max(0, dual) * scale));
  for (let short = Math.floor(gap * scale); short >= 1; short = Math.floor(short / 2)) {
    const list = pricer.within(values, prices, short, LISTED_BANDS);
    if (list === undefined) continue;
    for (const band of list.bands) {
      const slot = book.slot(band.box, band.cuts, band.extent);
      const worth = countsOf(band.part).reduce(
        (sum, [piece, copies]) => sum + values[piece] * Math.min(copies, left[piece]),
        0,
      );
      if ((duals.slots[slot] ?? 0) * scale - worth <= short) book.addBand(band);
    }
    return;
  }
}
