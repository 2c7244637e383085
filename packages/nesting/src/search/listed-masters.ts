import { shareOf } from '../deadline.js';
import type { BandBook } from '../master/band-book.js';
import type { LinearResult } from '../master/column-generation.js';
import type { SearchGround } from './ground.js';
import type { Incumbent } from './incumbent.js';
import { solveWhole, type WholeAnswer } from './whole-master.js';

/** Most patterns in a master that is to prove something. */
const MOST_TO_PROVE = 20_000;
/** Most patterns in a master that is only to find a better plan. */
const MOST_LIKELY = 1_500;
/** Most columns in a master over all that came up. */
const MOST_IN_POOL = 600;
/** Share of the time left after which listing is given up, where a gap has to be found that few fall short by. */
const SHARE_TO_LIST = 0.1;
/** Nodes that a master may take which proves nothing, and its share of the time left. */
const NODES_TO_FIND = 400;
const SHARE_TO_FIND = 0.15;

/**
 * Whether the integer master over patterns that are listed by what they fall short of
 * the best may be expected to prove plans: with this kind of cutting, and where the
 * order in which supplies must be taken is the cheapest anyway.
 */
export function mayList({ pricer, limits, bare, classes }: SearchGround): boolean {
  return (
    pricer.within !== undefined &&
    limits.narrowest <= 1 &&
    bare === undefined &&
    classes.every(({ supplies }) =>
      supplies.every((s, i) => s.price >= (supplies[i - 1] ?? s).price),
    )
  );
}

/** The integer master over all patterns that came up, where they are few. */
export async function masterOfPool(ground: SearchGround, incumbent: Incumbent): Promise<void> {
  const { book } = ground;
  if (book.bands.length + book.sheets.length > MOST_IN_POOL) return;
  await offerWhole(ground, incumbent, NODES_TO_FIND);
}

/**
 * The integer master over all patterns that a better plan could contain, where
 * they can be listed: it proves the best plan, or finds it.
 * @returns whether it did
 */
export async function masterOfAll(
  ground: SearchGround,
  incumbent: Incumbent,
  root: LinearResult,
): Promise<boolean> {
  const { pricer, scale, objective, classes } = ground;
  if (pricer.within === undefined || objective.caps.length > 0) return false;
  if (ground.deadline.left() <= 0) return false;
  if (classes.some(({ supplies }) => supplies.some(({ least }) => least > 0))) return false;
  const gap = incumbent.target * scale - root.bound.scaled;
  const { multipliers, classCost } = root.bound;
  const list = pricer.within(multipliers.pieces, classCost, gap, MOST_TO_PROVE);
  if (list === undefined) return false;
  const book = ground.newBook();
  book.addList(list);
  const { status, cost = 0 } = await offerWhole({ ...ground, book }, incumbent, undefined);
  if (status === 'stopped') return false;
  // The master takes supplies in whatever order is cheapest; in truth what is on hand goes first.
  if (status === 'optimal' && incumbent.cost > cost) return false;
  incumbent.prove();
  return true;
}

/**
 * A book of the patterns that a better plan is most likely to contain, and of those
 * of the linear plan; undefined where they cannot be listed.
 */
export function likelyBook(
  ground: SearchGround,
  root: LinearResult,
  gap: number,
  most: number,
): BandBook | undefined {
  const { pricer, scale } = ground;
  if (pricer.within === undefined) return undefined;
  const { multipliers, classCost } = root.bound;
  // Of sheets that the linear plan does without, the best patterns are of use as well.
  const { worth } = pricer.price(multipliers.pieces, 0);
  const least = classCost.map((cost, g) => Math.min(cost, worth[g]));
  const toList = shareOf(ground.deadline, SHARE_TO_LIST);
  for (let short = Math.floor(gap * scale); short >= 1; short = Math.floor(short / 1.5)) {
    if (toList.left() <= 0) return undefined;
    const list = pricer.within(multipliers.pieces, least, short, most);
    if (list === undefined) continue;
    const book = ground.newBook();
    book.addList(list);
    const used = (amounts: readonly number[]) =>
      [...amounts.keys()].filter((index) => amounts[index] > 0);
    const { answer } = root;
    if (answer !== undefined) book.adopt(ground.book, used(answer.bands), used(answer.sheets));
    return book;
  }
  return undefined;
}

/** The integer master over the patterns that a better plan is most likely to contain. */
export async function masterOfLikely(
  ground: SearchGround,
  incumbent: Incumbent,
  root: LinearResult,
): Promise<void> {
  const { pricer, scale } = ground;
  if (pricer.within === undefined) return;
  const { multipliers, classCost } = root.bound;
  let gap = incumbent.target * scale - root.bound.scaled;
  const toList = shareOf(ground.deadline, SHARE_TO_LIST);
  for (; gap >= 1; gap = Math.floor(gap / 2)) {
    if (toList.left() <= 0) return;
    const list = pricer.within(multipliers.pieces, classCost, gap, MOST_LIKELY);
    if (list === undefined) continue;
    const book = ground.newBook();
    book.addList(list);
    await offerWhole({ ...ground, book }, incumbent, NODES_TO_FIND);
    return;
  }
}

async function offerWhole(
  ground: SearchGround,
  incumbent: Incumbent,
  nodes: number | undefined,
): Promise<WholeAnswer> {
  const left = ground.deadline.left();
  if (left <= 0) return { status: 'stopped' };
  // Surplus that is taken out afterwards may make a plan of the same cost cheaper.
  const surplus = ground.bare !== undefined && incumbent.planned !== undefined;
  const atMost = surplus ? incumbent.cost : incumbent.target;
  const seconds = left * (nodes === undefined ? 1 : SHARE_TO_FIND);
  const cap = { measure: incumbent.measure, atMost };
  const answer = await solveWhole(ground, cap, seconds, nodes);
  incumbent.offer(answer.planned);
  incumbent.tell('integer master');
  return answer;
}
