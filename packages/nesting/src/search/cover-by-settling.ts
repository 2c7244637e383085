import type { BandBook } from '../master/band-book.js';
import type { BandAnswer } from '../master/band-master.js';
import type { Covered, CoverRequest } from './cover.js';
import type { SearchGround } from './ground.js';
import { settleRest } from './settle-rest.js';
import { SettledMaster } from './settled-master.js';

export interface CoverBySettlingRequest extends Omit<CoverRequest, 'weights' | 'shaken' | 'nodes'> {
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
const EPSILON = 1e-6;

/**
 * Cuts as much of a demand as the caps allow by settling bands and sheets one
 * after another, those the linear plan has most of first, and solving the
 * linear plan with fresh patterns in between; an integer master cuts the last few
 * bands. Since bands are settled before it is known what lies beside them, the
 * linear plan stays close to its best almost to the end.
 */
export async function coverBySettling(
  ground: SearchGround,
  request: CoverBySettlingRequest,
): Promise<Covered | undefined> {
  const { demand, classes, caps, losses, likely, random } = request;
  const book = ground.newBook();
  for (const pattern of request.seeds) book.addPattern(pattern);
  const bands = likely.bands.filter((band) =>
    likely.book.bands[band].counts.every(([piece, copies]) => copies <= demand[piece]),
  );
  book.adopt(likely.book, bands, likely.sheets);
  const objective = { cost: ground.objective.cost, caps };
  const master = new SettledMaster(ground, { demand, classes, objective, losses, book });
  try {
    let answer = await master.open(ROUNDS_FIRST);
    while (answer !== undefined && !hopeless(answer, request) && settle(master, answer, random)) {
      answer = await master.solve(ROUNDS_EACH);
    }
    if (answer === undefined) return undefined;
    if (hopeless(answer, request)) return { planned: undefined, best: false };
    return await settleRest(ground, request, master, book, answer);
  } finally {
    master.close();
  }
}

/** Whether even the linear plan goes without more than is of use. */
function hopeless({ short }: BandAnswer, { weights, cutoff }: CoverBySettlingRequest): boolean {
  const lacking = short.reduce((sum, amount, piece) => sum + amount * weights[piece], 0);
  return cutoff !== undefined && lacking > cutoff + EPSILON;
}

/**
 * Settles what is whole, and one more.
 * @returns false once few bands are open
 */
function settle(master: SettledMaster, answer: BandAnswer, random: () => number): boolean {
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
    consider(amount, master.sheets[sheet] ?? 0, SHEETS_WEIGH, (n) => master.settleSheet(sheet, n));
  });
  answer.bands.forEach((amount, band) => {
    open += consider(amount, master.bands[band] ?? 0, 1, (n) => master.settleBand(band, n));
  });
  if (open < BANDS_OPEN || settleMost === undefined) return false;
  settleMost();
  return true;
}
